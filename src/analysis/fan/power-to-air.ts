/**
 * Part of a fan's electric power that warms the air: all of it where the motor hangs in the airstream, what the motor
 * does not lose where it stands outside. Working assumption, between the two.
 */
export const POWER_TO_AIR = 0.9;
