/** Shapes of the texts and names within a refit: bounded, printable, and never a word that programs keep. */
import { z } from 'zod';
import { LIMITS } from './limits.ts';
import { photoNameFault } from './photo.ts';

// Zod otherwise probes for `new Function`, which the page's content policy reports as a violation.
z.config({ jitless: true });

const ID = /^[A-Za-z0-9][A-Za-z0-9-]{0,60}$/;
const POLICY = /^[A-Za-z0-9][A-Za-z0-9.-]{0,60}$/;
const CHAIN = /^[A-Z][A-Z0-9]{0,3}$/;
/** UTC or with an offset, seconds and their fraction optional. */
const WHEN =
  /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])T([01]\d|2[0-3]):[0-5]\d(:[0-5]\d(\.\d{1,9})?)?(Z|[+-]([01]\d|2[0-3]):[0-5]\d)$/;
/** A date alone will do. */
const DAY = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/;

const MARK = '[A-Za-z0-9+/_:-]{1,31}';

const ID_WORDS = 'must be letters, digits and hyphens, beginning with a letter or digit, 61 at most';

/** True for keys that every JavaScript object seems to have: `constructor`, `toString`, `__proto__`. */
export const isReservedKey = (key: string): boolean => key === 'prototype' || key in Object.prototype;

// Control characters could write to a terminal; half a surrogate pair cannot be stored as UTF-8.
const hasUnprintable = (text: string, allowLines: boolean): boolean =>
  (allowLines ? /[\p{Surrogate}]|[^\P{Cc}\n\r\t]/u : /[\p{Surrogate}\p{Cc}]/u).test(text);

/** One line of text. */
export const line = (max: number, min = 0) =>
  z
    .string()
    .min(min)
    .max(max)
    .refine((text) => !hasUnprintable(text, false), 'must be one line without control characters');
/** Text of several lines. */
export const prose = () =>
  z
    .string()
    .max(LIMITS.text)
    .refine((text) => !hasUnprintable(text, true), 'must be text without control characters');
const key = (pattern: RegExp, words: string) =>
  z
    .string()
    .regex(pattern, words)
    .refine((id) => !isReservedKey(id), 'is a word that programs keep for themselves; choose another');

export const id = key(ID, ID_WORDS).meta({ id: 'id' });
export const chainId = key(
  CHAIN,
  "must be a capital letter, with up to three capitals or digits after it, like 'X' or 'A1'",
);
/** What is printed beside a terminal: '13', '+24V', '/A', 'X1:3'. */
export const terminalMark = key(
  new RegExp(`^${MARK}$`),
  "must be a terminal's mark like '13' or '+24V': letters, digits and + - / : _, 31 at most",
);
/** A terminal of the wiring: a device, a dot and a mark. */
export const terminal = z
  .string()
  .regex(
    new RegExp(`^[A-Za-z0-9][A-Za-z0-9-]{0,60}\\.${MARK}$`),
    "must be a terminal: a device, a dot and the terminal's mark, like 'K1.A1'",
  );
export const policyId = key(POLICY, 'must be letters, digits, dots and hyphens, 61 at most');

/** A record with bounded names and a bounded number of them; `of` says of what. */
export const atMost = <K extends z.ZodString, V extends z.ZodType>(
  keys: K,
  values: V,
  max: number,
  of: string,
) =>
  z
    .record(keys, values)
    .refine((entries) => Object.keys(entries).length <= max, `must hold at most ${max} ${of}`)
    .meta({ maxProperties: max });

export const photoName = z
  .string()
  .max(120)
  .refine(
    (name) => photoNameFault(name) === undefined,
    'must be the name of a photo, like plate-1.jpg: letters, digits, dots, hyphens and underscores',
  );

/** Names of photos, each once. */
export const photos = z
  .array(photoName)
  .max(LIMITS.photos)
  .refine((names) => new Set(names).size === names.length, 'must name each photo once');

/** A moment as ISO 8601. */
export const whenSchema: z.ZodType<string> = z
  .string()
  .regex(WHEN, "must be a date and time like '2026-03-01T18:30:00Z'");

/** A date, or a moment, as ISO 8601. */
export const day = z
  .string()
  .refine(
    (text) => DAY.test(text) || WHEN.test(text),
    "must be a date like '2026-03-01', or a date and time like '2026-03-01T18:30:00Z'",
  );
