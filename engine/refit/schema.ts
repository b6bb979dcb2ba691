/** The shape of refit.json and of one line of edits.jsonl, from which the published JSON Schema is made. */
import { z } from 'zod';
import { BASES } from '../quantity/types.ts';
import { LIMITS } from './limits.ts';
import type { Change, Edit, Fact, FactValue, Part, Place, Refit } from './types.ts';

// Zod otherwise probes for `new Function`, which the page's content policy reports as a violation.
z.config({ jitless: true });

const ID = /^[A-Za-z0-9][A-Za-z0-9-]{0,60}$/;
const POLICY = /^[A-Za-z0-9][A-Za-z0-9.-]{0,60}$/;
const CHAIN = /^[A-Z][A-Z0-9]{0,3}$/;
/** UTC or with an offset, seconds and their fraction optional. */
const WHEN =
  /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])T([01]\d|2[0-3]):[0-5]\d(:[0-5]\d(\.\d{1,9})?)?(Z|[+-]([01]\d|2[0-3]):[0-5]\d)$/;

const ID_WORDS = 'must be letters, digits and hyphens, beginning with a letter or digit, 61 at most';

/** True for keys that every JavaScript object seems to have: `constructor`, `toString`, `__proto__`. */
export const isReservedKey = (key: string): boolean => key === 'prototype' || key in Object.prototype;

// Control characters could write to a terminal; half a surrogate pair cannot be stored as UTF-8.
const hasUnprintable = (text: string, allowLines: boolean): boolean =>
  (allowLines ? /[\p{Surrogate}]|[^\P{Cc}\n\r\t]/u : /[\p{Surrogate}\p{Cc}]/u).test(text);

const line = (max: number, min = 0) =>
  z
    .string()
    .min(min)
    .max(max)
    .refine((text) => !hasUnprintable(text, false), 'must be one line without control characters');
const prose = () =>
  z
    .string()
    .max(LIMITS.text)
    .refine((text) => !hasUnprintable(text, true), 'must be text without control characters');
const key = (pattern: RegExp, words: string) =>
  z
    .string()
    .regex(pattern, words)
    .refine((id) => !isReservedKey(id), 'is a word that programs keep for themselves; choose another');

const id = key(ID, ID_WORDS).meta({ id: 'id' });
const chainId = key(
  CHAIN,
  "must be a capital letter, with up to three capitals or digits after it, like 'X' or 'A1'",
);
const policyId = key(POLICY, 'must be letters, digits, dots and hyphens, 61 at most');

const atMost = <K extends z.ZodString, V extends z.ZodType>(keys: K, values: V, max: number, of: string) =>
  z
    .record(keys, values)
    .refine((entries) => Object.keys(entries).length <= max, `must hold at most ${max} ${of}`)
    .meta({ maxProperties: max });

export const factValueSchema: z.ZodType<FactValue> = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('quantity'), text: line(LIMITS.text) }),
  z.strictObject({ kind: z.literal('choice'), option: id }),
  z.strictObject({ kind: z.literal('choices'), options: z.array(id).max(LIMITS.options) }),
  z.strictObject({ kind: z.literal('text'), text: prose() }),
  z.strictObject({ kind: z.literal('curve'), text: prose() }),
]);

export const factSchema: z.ZodType<Fact> = z
  .strictObject({ value: factValueSchema, basis: z.enum(BASES), note: prose().exactOptional() })
  .meta({ id: 'fact' });

export const partSchema: z.ZodType<Part> = z
  .strictObject({
    id: id.refine((text) => text !== 'none', "must not be 'none', which says that a place is empty"),
    kind: id,
    name: line(LIMITS.name, 1),
    facts: atMost(id, factSchema, LIMITS.facts, 'facts'),
  })
  .meta({ id: 'part' });

export const placeSchema: z.ZodType<Place> = z
  .strictObject({
    options: z.array(id).max(LIMITS.options),
    chosen: id.nullable(),
  })
  .meta({ id: 'place' });

const places = atMost(id, placeSchema, LIMITS.places, 'places');
const chainSchema = z.strictObject({ id: chainId, kind: z.literal('axis'), places }).meta({ id: 'chain' });
const machine = z.enum(['lathe', 'mill', 'other']);
const title = z.strictObject({ name: line(LIMITS.name, 1), about: prose() });

export const refitSchema: z.ZodType<Refit> = z.strictObject({
  format: z.literal('fettle-refit'),
  version: z.literal(1),
  id,
  name: line(LIMITS.name, 1),
  about: prose(),
  machine,
  places,
  chains: z.array(chainSchema).max(LIMITS.chains),
  parts: atMost(id, partSchema, LIMITS.parts, 'parts'),
  policies: atMost(policyId, line(LIMITS.text), LIMITS.policies, 'policies'),
});

export const changeSchema: z.ZodType<Change> = z.discriminatedUnion('do', [
  z.strictObject({
    do: z.literal('fact'),
    part: id,
    fact: id,
    old: factSchema.nullable(),
    new: factSchema.nullable(),
  }),
  z.strictObject({ do: z.literal('part'), id, old: partSchema.nullable(), new: partSchema.nullable() }),
  z.strictObject({
    do: z.literal('place'),
    chain: chainId.nullable(),
    place: id,
    old: placeSchema.nullable(),
    new: placeSchema.nullable(),
  }),
  z.strictObject({
    do: z.literal('chain'),
    id: chainId,
    old: chainSchema.nullable(),
    new: chainSchema.nullable(),
  }),
  z.strictObject({
    do: z.literal('policy'),
    policy: policyId,
    old: line(LIMITS.text).nullable(),
    new: line(LIMITS.text).nullable(),
  }),
  z.strictObject({ do: z.literal('machine'), old: machine, new: machine }),
  z.strictObject({ do: z.literal('title'), old: title, new: title }),
]);

const count = z.int().min(0).max(1_000_000_000);

/** A person as an edit names them. */
export const whoSchema: z.ZodType<string> = line(LIMITS.name, 1);
/** A moment as ISO 8601. */
export const whenSchema: z.ZodType<string> = z
  .string()
  .regex(WHEN, "must be a date and time like '2026-03-01T18:30:00Z'");

export const editSchema: z.ZodType<Edit> = z.strictObject({
  number: count.min(1),
  who: whoSchema,
  when: whenSchema,
  basedOn: count,
  changes: z.array(changeSchema).min(1).max(LIMITS.changes),
  says: prose(),
});

/** The JSON Schema (2020-12) of refit.json, published as docs/refit.schema.json. */
export function refitJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(refitSchema, { target: 'draft-2020-12' });
  return { title: 'refit.json: one machine, everything known and decided about it', ...schema };
}
