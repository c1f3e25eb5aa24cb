// A sweep in a process of its own, to be killed: run by sweep-resume.test.ts.
import { smallFarm, sweepInto } from './sweep-of.ts';

await sweepInto(process.argv[2], smallFarm());
