/** What the exit code tells a script. */
export const EXIT = {
  fine: 0,
  fails: 1,
  /** Wrong use, a file that cannot be read, or a mistake of Fettle's own. */
  refused: 2,
  unknown: 3,
} as const;
