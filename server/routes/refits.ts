/** Refits: listed, begun, opened. */
import { z } from 'zod';
import { blankRefit } from '../../engine/refit/blank.ts';
import { LIMITS, whoSchema } from '../../engine/refit/index.ts';
import type { RefitList, RefitListed, RefitMade, RefitOpened } from '../../engine/refit/wire.ts';
import { json, onWire, refusedBy } from '../answer.ts';
import { readJson } from '../body.ts';
import { type Context, withRefit } from '../context.ts';
import type { Route } from '../http.ts';
import { newId } from '../ids.ts';

export const NOBODY = 'somebody';

const newRefitSchema = z.strictObject({
  name: z.string().max(LIMITS.name),
  about: z.string().max(LIMITS.text).default(''),
  machine: z.enum(['lathe', 'mill', 'other']),
  axes: z.array(z.string()).max(LIMITS.chains),
  spindle: z.boolean().default(false),
  who: whoSchema.default(NOBODY),
});

export const refitRoutes = (context: Context): Route[] => [
  { method: 'GET', path: '/api/refits', handle: () => listRefits(context) },
  {
    method: 'POST',
    path: '/api/refits',
    takes: { types: ['application/json'], most: 64_000 },
    handle: (ask) => {
      const { who, name, ...wanted } = readJson(ask, newRefitSchema);
      const id = newId(name, context.random());
      const blank = blankRefit({ id, name: name.trim(), ...wanted });
      if (!blank.ok) return refusedBy(blank.problem);
      return context.turns.take(() => {
        const made = context.store.createRefit(blank.value, who, context.now());
        return made.ok ? json(201, { id } satisfies RefitMade) : refusedBy(made.problem);
      });
    },
  },
  {
    method: 'GET',
    path: '/api/refits/:id',
    handle: ({ at }) =>
      withRefit(context, at.id!, ({ refit, head }) => json(200, { refit, head } satisfies RefitOpened)),
  },
];

function listRefits({ store }: Context) {
  const lines = store.listRefits();
  if (!lines.ok) return refusedBy(lines.problem);
  const refits = lines.value.map(({ id, name, machine, head, changedAt }): RefitListed => {
    const open = store.openRefit(id);
    const line = { id, name, about: '', machine, edits: head, changed: changedAt };
    return open.ok ? { ...line, about: open.value.refit.about } : { ...line, problem: onWire(open.problem) };
  });
  return json(200, { refits } satisfies RefitList);
}
