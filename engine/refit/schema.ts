/** The shape of refit.json and of one line of edits.jsonl, from which the published JSON Schema is made. */
import { z } from 'zod';
import { BASES } from '../quantity/types.ts';
import { LIMITS } from './limits.ts';
import { stopSchema } from './stop-schema.ts';
import { CONDITIONS, evidenceSchema, keepSchema, surveyItemSchema, tagSchema } from './survey-schema.ts';
import { atMost, chainId, id, line, photos, policyId, prose, whenSchema } from './text-schema.ts';
import type { Change, Edit, Fact, FactValue, Part, Place, Refit } from './types.ts';
import {
  auxiliarySchema,
  cableSchema,
  deviceSchema,
  wireSchema,
  wiringSchema,
  workSchema,
} from './wiring-schema.ts';

export { isReservedKey, whenSchema } from './text-schema.ts';

export const factValueSchema: z.ZodType<FactValue> = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('quantity'), text: line(LIMITS.text) }),
  z.strictObject({ kind: z.literal('choice'), option: id }),
  z.strictObject({ kind: z.literal('choices'), options: z.array(id).max(LIMITS.options) }),
  z.strictObject({ kind: z.literal('text'), text: prose() }),
  z.strictObject({ kind: z.literal('curve'), text: prose() }),
]);

export const factSchema: z.ZodType<Fact> = z
  .strictObject({
    value: factValueSchema,
    basis: z.enum(BASES),
    note: prose().exactOptional(),
    evidence: id.exactOptional(),
  })
  .meta({ id: 'fact' });

export const partSchema: z.ZodType<Part> = z
  .strictObject({
    id: id.refine((text) => text !== 'none', "must not be 'none', which says that a place is empty"),
    kind: id,
    name: line(LIMITS.name, 1),
    facts: atMost(id, factSchema, LIMITS.facts, 'facts'),
    condition: z.enum(CONDITIONS).exactOptional(),
    notes: prose().exactOptional(),
    photos: photos.exactOptional(),
  })
  .meta({ id: 'part' });

export const placeSchema: z.ZodType<Place> = z
  .strictObject({
    options: z.array(id).max(LIMITS.options),
    chosen: id.nullable(),
  })
  .meta({ id: 'place' });

const places = atMost(id, placeSchema, LIMITS.places, 'places');
const chainSchema = z
  .strictObject({ id: chainId, kind: z.enum(['axis', 'spindle']), places })
  .meta({ id: 'chain' });
const machine = z.enum(['lathe', 'mill', 'other']);
const title = z.strictObject({ name: line(LIMITS.name, 1), about: prose() });

export const refitSchema: z.ZodType<Refit> = z.strictObject({
  format: z.literal('fettle-refit'),
  version: z.literal(5),
  id,
  name: line(LIMITS.name, 1),
  about: prose(),
  machine,
  places,
  chains: z.array(chainSchema).max(LIMITS.chains),
  parts: atMost(id, partSchema, LIMITS.parts, 'parts'),
  policies: atMost(policyId, line(LIMITS.text), LIMITS.policies, 'policies'),
  evidence: atMost(id, evidenceSchema, LIMITS.evidence, 'measurements'),
  tags: atMost(id, tagSchema, LIMITS.tags, 'tags'),
  keeps: atMost(id, keepSchema, LIMITS.keeps, 'things to keep'),
  survey: atMost(id, surveyItemSchema, LIMITS.survey, 'items'),
  stop: stopSchema.nullable(),
  work: atMost(id, workSchema, LIMITS.work, 'pieces of work'),
  auxiliaries: atMost(id, auxiliarySchema, LIMITS.auxiliaries, 'auxiliaries'),
  wiring: wiringSchema,
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
  z.strictObject({
    do: z.literal('evidence'),
    id,
    old: evidenceSchema.nullable(),
    new: evidenceSchema.nullable(),
  }),
  z.strictObject({ do: z.literal('tag'), id, old: tagSchema.nullable(), new: tagSchema.nullable() }),
  z.strictObject({ do: z.literal('keep'), id, old: keepSchema.nullable(), new: keepSchema.nullable() }),
  z.strictObject({
    do: z.literal('survey'),
    id,
    old: surveyItemSchema.nullable(),
    new: surveyItemSchema.nullable(),
  }),
  z.strictObject({ do: z.literal('stop'), old: stopSchema.nullable(), new: stopSchema.nullable() }),
  z.strictObject({ do: z.literal('work'), id, old: workSchema.nullable(), new: workSchema.nullable() }),
  z.strictObject({
    do: z.literal('auxiliary'),
    id,
    old: auxiliarySchema.nullable(),
    new: auxiliarySchema.nullable(),
  }),
  z.strictObject({ do: z.literal('device'), id, old: deviceSchema.nullable(), new: deviceSchema.nullable() }),
  z.strictObject({ do: z.literal('wire'), id, old: wireSchema.nullable(), new: wireSchema.nullable() }),
  z.strictObject({ do: z.literal('cable'), id, old: cableSchema.nullable(), new: cableSchema.nullable() }),
  z.strictObject({
    do: z.literal('wiring-setting'),
    setting: id,
    old: line(LIMITS.text).nullable(),
    new: line(LIMITS.text).nullable(),
  }),
  z.strictObject({ do: z.literal('machine'), old: machine, new: machine }),
  z.strictObject({ do: z.literal('title'), old: title, new: title }),
]);

const count = z.int().min(0).max(1_000_000_000);

/** A person as an edit names them. */
export const whoSchema: z.ZodType<string> = line(LIMITS.name, 1);

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
