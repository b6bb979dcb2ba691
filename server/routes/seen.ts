/** How far each person has read a refit's history. */
import { z } from 'zod';
import { checkShape, whoSchema } from '../../engine/refit/index.ts';
import type { Seen } from '../../engine/refit/wire.ts';
import { json, refusedBy } from '../answer.ts';
import { readJson } from '../body.ts';
import { type Context, withRefit } from '../context.ts';
import type { Route } from '../http.ts';

const seenSchema = z.strictObject({ who: whoSchema, number: z.int().min(0).optional() });

export const seenRoutes = (context: Context): Route[] => [
  {
    method: 'GET',
    path: '/api/refits/:id/seen',
    handle: ({ at, query }) =>
      withRefit(context, at.id!, () => {
        const who = checkShape(whoSchema, query.get('who') ?? undefined, 'who');
        if (!who.ok) return refusedBy({ ...who.problem, where: 'who' });
        const number = context.store.lastSeen(at.id!, who.value);
        return number.ok
          ? json(200, { who: who.value, number: number.value } satisfies Seen)
          : refusedBy(number.problem);
      }),
  },
  {
    method: 'POST',
    path: '/api/refits/:id/seen',
    takes: { types: ['application/json'], most: 16_000 },
    handle: (ask) =>
      withRefit(context, ask.at.id!, () => {
        const { who, number } = readJson(ask, seenSchema);
        return context.turns.take(() => {
          const seen = context.store.markSeen(ask.at.id!, who, number);
          return seen.ok ? json(200, { who, number: seen.value } satisfies Seen) : refusedBy(seen.problem);
        });
      }),
  },
];
