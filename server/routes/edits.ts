/** Edits: made, undone, read again, and followed as they come. */
import { z } from 'zod';
import { LIMITS, whoSchema } from '../../engine/refit/index.ts';
import { changeSchema } from '../../engine/refit/schema.ts';
import type { EditPage } from '../../engine/refit/wire.ts';
import { json, refusal, refusedBy } from '../answer.ts';
import { readJson } from '../body.ts';
import { changesProblem } from '../check-edit.ts';
import { acknowledge, type Context, withRefit } from '../context.ts';
import type { Answer, Route } from '../http.ts';
import { wholeNumber } from '../number.ts';

const PAGE = 200;

const number = z.int().min(0).max(1_000_000_000);
const editSchema = z.strictObject({
  who: whoSchema,
  basedOn: number,
  changes: z.array(changeSchema).min(1).max(LIMITS.changes),
});
const undoSchema = z.strictObject({ who: whoSchema, number: number.min(1) });

export const editRoutes = (context: Context): Route[] => [
  {
    method: 'POST',
    path: '/api/refits/:id/edits',
    takes: { types: ['application/json'], most: 4_000_000 },
    handle: (ask) =>
      withRefit(context, ask.at.id!, () => {
        const edit = readJson(ask, editSchema);
        return context.turns.take(() => keepEdit(context, ask.at.id!, edit));
      }),
  },
  {
    method: 'GET',
    path: '/api/refits/:id/edits',
    handle: ({ at, query }) => withRefit(context, at.id!, ({ head }) => page(context, at.id!, head, query)),
  },
  {
    method: 'POST',
    path: '/api/refits/:id/undo',
    takes: { types: ['application/json'], most: 16_000 },
    handle: (ask) =>
      withRefit(context, ask.at.id!, () => {
        const { who, number: which } = readJson(ask, undoSchema);
        return context.turns.take(() =>
          withRefit(context, ask.at.id!, ({ head }) => {
            const undone = context.store.undo(ask.at.id!, which, { who, when: context.now() });
            return acknowledge(context, ask.at.id!, undone, head);
          }),
        );
      }),
  },
  {
    method: 'GET',
    path: '/api/refits/:id/live',
    handle: ({ at, query, headers }) =>
      withRefit(context, at.id!, ({ head }) => {
        // A page that lost its stream sends the last number it had; a fresh one may say it in the address.
        const text = headers['last-event-id'] ?? query.get('after') ?? String(head);
        const after = wholeNumber(String(text));
        if (after === undefined)
          return refusal(422, 'not-a-number', 'after must be the number of an edit, such as 12.', 'after');
        return {
          status: 200,
          headers: { 'content-type': 'text/event-stream; charset=utf-8', 'cache-control': 'no-store' },
          body: (response) => context.live.listen(at.id!, after, response),
        };
      }),
  },
];

/** In its turn, so against the refit as it is by then. */
const keepEdit = (context: Context, id: string, edit: z.infer<typeof editSchema>): Answer | Promise<Answer> =>
  withRefit(context, id, ({ refit, head }) => {
    const problem = changesProblem(refit, edit.changes);
    if (problem) return refusedBy(problem);
    const kept = context.store.appendEdit(id, { ...edit, when: context.now() });
    return acknowledge(context, id, kept, head);
  });

/** The newest edits up to `to`, or the first ones from `from`. */
function page({ store }: Context, id: string, head: number, query: URLSearchParams): Answer {
  const ends: { from?: number; to?: number } = {};
  for (const name of ['from', 'to'] as const) {
    const text = query.get(name);
    if (text === null) continue;
    const value = wholeNumber(text);
    if (value === undefined)
      return refusal(422, 'not-a-number', `${name} must be the number of an edit, such as 12.`, name);
    ends[name] = value;
  }
  const to = Math.min(ends.to ?? head, head);
  const from = Math.max(1, ends.from ?? to - PAGE + 1);
  const edits = store.history(id, { from, to: Math.min(to, from + PAGE - 1) });
  return edits.ok ? json(200, { edits: edits.value, head } satisfies EditPage) : refusedBy(edits.problem);
}
