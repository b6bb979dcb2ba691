/** Brings files of older formats up to today's, one version at a time. */
import { ok, type Result, refuse } from '../quantity/types.ts';

type Document = Readonly<Record<string, unknown>>;

/** For each older version, what makes it the next one. A new version adds one line here and its two-way test. */
export type Upgrades = Readonly<Record<number, (document: Document) => Document>>;

export const UPGRADES: Upgrades = {
  // Version 2 brought the survey: nothing had been surveyed before.
  1: (document) => ({ ...document, evidence: {}, tags: {}, keeps: {}, survey: {} }),
  // Version 3 brought the stop circuit: none had been drawn before.
  2: (document) => ({ ...document, stop: null }),
  // Version 4 brought the spindle's chain, the work wanted, the auxiliaries and the wiring.
  3: (document) => ({
    ...document,
    work: {},
    auxiliaries: {},
    wiring: { devices: {}, wires: {}, cables: {}, settings: {} },
  }),
  // Version 5 brought the marks of usual values in the wiring, and names of a drive's feed that say what belongs there;
  // those are changed where the history can follow (feed-marks.ts).
  4: (document) => document,
};
export const CURRENT_VERSION = 5;

/** The document in the current format; what is no refit at all or is from a newer Fettle is refused. */
export function upgrade(
  value: unknown,
  upgrades: Upgrades = UPGRADES,
  current: number = CURRENT_VERSION,
): Result<unknown> {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return refuse({ code: 'malformed', message: 'the whole must be an object in { }.', where: '' });
  const { format, version } = value as Document;
  if (format !== 'fettle-refit')
    return refuse({
      code: 'malformed',
      message: "This is not a refit: format must be 'fettle-refit'.",
      where: 'format',
    });
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return refuse({
      code: 'malformed',
      message: 'version must be a whole number, 1 or more.',
      where: 'version',
    });
  if (version > current)
    return refuse({
      code: 'malformed',
      message: `This refit was written by a newer Fettle (version ${version} of the format; this one reads up to ${current}). Bring Fettle up to date and open it again.`,
      where: 'version',
    });
  let document = value as Document;
  for (let from = version; from < current; from++) {
    const step = upgrades[from];
    if (!step)
      return refuse({
        code: 'malformed',
        message: `version ${from} of the format is no longer read.`,
        where: 'version',
      });
    document = { ...step(document), version: from + 1 };
  }
  return ok(document);
}
