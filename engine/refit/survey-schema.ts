/** The shape of what a survey finds: measurements, tags, things to keep and the state of the auxiliaries. */
import { z } from 'zod';
import { LIMITS } from './limits.ts';
import { atMost, day, id, line, photos, prose } from './text-schema.ts';
import type { Evidence, Keep, SurveyItem, Tag } from './types.ts';

export const CONDITIONS = ['works', 'worn', 'dead', 'unknown'] as const;

const readings = z.array(line(LIMITS.reading)).max(LIMITS.readings);

export const evidenceSchema: z.ZodType<Evidence> = z
  .strictObject({
    id,
    method: id,
    part: id.nullable(),
    given: atMost(id, line(LIMITS.text), LIMITS.columns, 'values'),
    readings: atMost(id, readings, LIMITS.columns, 'names of readings'),
    aside: z
      .array(
        z
          .int()
          .min(0)
          .max(LIMITS.readings - 1),
      )
      .max(LIMITS.readings)
      .refine((positions) => new Set(positions).size === positions.length, 'must name each reading once'),
    note: prose(),
    when: day,
    photos,
  })
  .meta({ id: 'evidence' });

export const tagSchema: z.ZodType<Tag> = z
  .strictObject({
    id,
    tag: line(LIMITS.name),
    cable: line(LIMITS.name),
    here: line(LIMITS.name),
    there: line(LIMITS.name),
    otherTag: line(LIMITS.name),
    colour: line(LIMITS.name),
    signal: line(LIMITS.name),
    note: prose(),
    photos,
    state: z.enum(['untagged', 'one-end', 'both-ends']),
  })
  .meta({ id: 'tag' });

export const keepSchema: z.ZodType<Keep> = z
  .strictObject({
    id,
    what: line(LIMITS.name, 1),
    state: z.enum(['to-do', 'kept', 'not-there']),
    note: prose(),
    photos,
  })
  .meta({ id: 'keep' });

export const surveyItemSchema: z.ZodType<SurveyItem> = z
  .strictObject({
    id,
    state: z.enum([...CONDITIONS, 'none']),
    note: prose(),
    photos,
    answers: atMost(id, line(LIMITS.text), LIMITS.columns, 'answers'),
  })
  .meta({ id: 'survey' });
