/** Protective conductors: the least area by that of the line conductors, in mm² of copper. */

export const PROTECTIVE_SOURCE = {
  source: 'IEC 60204-1:2016, 5.2, Table 1 (recalled); the same rule is quoted for IEC 60364-5-54',
  status: 'published' as const,
};

export const LEAKAGE_SOURCE = {
  source: 'IEC 60204-1:2016, 8.2.6, as quoted clause by clause',
  status: 'published' as const,
};

/** Above this standing leakage in A one ordinary protective conductor is not enough. */
export const LEAKAGE_LIMIT = 0.01;
/** Least area in mm² then, unless there are two, or an industrial plug with at least 2.5 mm². */
export const LEAKAGE_AREA = 10;

export const ALONE_SOURCE = {
  source: 'IEC 60364-5-54 as quoted on a page on protective conductors',
  status: 'published' as const,
};
/** A protective conductor that is no core of the same cable: least area with and without cover against knocks. */
export const ALONE_COVERED = 2.5;
export const ALONE_BARE = 4;

/** Least area of the protective conductor for lines of an area. */
export function protectiveArea(line: number): number {
  if (line <= 16) return line;
  return line <= 35 ? 16 : line / 2;
}

/** A·√s/mm² for copper: a core in a PVC cable, and one lying apart. */
export const ADIABATIC = {
  core: 115,
  apart: 143,
  source: 'IEC 60364-5-54 as quoted',
  status: 'published',
} as const;
