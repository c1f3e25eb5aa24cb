/** How a folder that a command wrote earlier is told from one with somebody's own files. */
export interface OwnFolder {
  /** names that all stand in it */
  marks: readonly string[];
  /** every name in it fits; a name that does not is somebody's own file, and the folder is left alone */
  own: RegExp;
}
