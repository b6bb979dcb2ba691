/** Refits carried in and out as files. */
import { PARTS } from '../../engine/parts/index.ts';
import type { Result } from '../../engine/quantity/types.ts';
import {
  checkShape,
  LIMITS,
  readArchive,
  readRefit,
  whoSchema,
  writeRefit,
} from '../../engine/refit/index.ts';
import type { RefitImported } from '../../engine/refit/wire.ts';
import type { OpenRefit } from '../../store/index.ts';
import { json, refusedBy } from '../answer.ts';
import { type Context, withRefit } from '../context.ts';
import type { Answer, Route } from '../http.ts';
import { newId } from '../ids.ts';
import { NOBODY } from './refits.ts';

const KINDS = Object.keys(PARTS);

export const carryRoutes = (context: Context): Route[] => [
  {
    method: 'POST',
    path: '/api/import',
    takes: { types: ['application/octet-stream', 'application/json'], most: LIMITS.archive },
    handle: ({ body, query }) => {
      const who = checkShape(whoSchema, query.get('who') ?? NOBODY, 'who');
      if (!who.ok) return refusedBy({ ...who.problem, where: 'who' });
      return context.turns.take(() => takeIn(context, body, who.value));
    },
  },
  {
    method: 'GET',
    path: '/api/refits/:id/file.refit',
    handle: ({ at }) =>
      withRefit(context, at.id!, ({ head }) => {
        const file = context.store.exportArchive(at.id!);
        if (!file.ok) return refusedBy(file.problem);
        const { bytes, from } = file.value;
        const whole = from <= 1 || head === 0;
        return download(`${at.id}.refit`, 'application/octet-stream', bytes, {
          // A history too long for a file begins later; a page can say so.
          ...(whole ? {} : { 'fettle-first-edit': String(from) }),
        });
      }),
  },
  {
    method: 'GET',
    path: '/api/refits/:id/file.json',
    handle: ({ at }) =>
      withRefit(context, at.id!, ({ refit }) =>
        download(`${at.id}.json`, 'application/json; charset=utf-8', writeRefit(refit)),
      ),
  },
];

const download = (
  name: string,
  type: string,
  body: string | Uint8Array,
  more: Answer['headers'] = {},
): Answer => ({
  status: 200,
  headers: {
    'content-type': type,
    // An id is letters, digits and hyphens, so it can stand here as it is.
    'content-disposition': `attachment; filename="${name}"`,
    'cache-control': 'no-store',
    ...more,
  },
  body,
});

function takeIn(context: Context, bytes: Uint8Array, who: string): Answer {
  const found = look(bytes);
  if (!found.ok) return refusedBy(found.problem);
  const { id: own, name } = found.value;
  const open = context.store.openRefit(own);
  if (!open.ok && open.problem.code !== 'unknown-name') return refusedBy(open.problem);
  const id = open.ok ? newId(name, context.random()) : own;
  const by = { who, when: context.now() };
  const taken: Result<OpenRefit> = isZip(bytes)
    ? context.store.importArchive(bytes, { ...by, as: id })
    : context.store.createRefit({ ...found.value, id }, by.who, by.when);
  if (!taken.ok) return refusedBy(taken.problem);
  return json(201, { id, renamed: id !== own } satisfies RefitImported);
}

/** Every zip begins so. */
const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

function look(bytes: Uint8Array) {
  if (isZip(bytes)) {
    const archive = readArchive(bytes, KINDS);
    return archive.ok ? { ok: true as const, value: archive.value.refit } : archive;
  }
  const refuseFile = (message: string) => ({
    ok: false as const,
    problem: { code: 'malformed' as const, message },
  });
  if (bytes.length === 0) return refuseFile('The file is empty, so nothing was taken in.');
  try {
    return readRefit(new TextDecoder('utf-8', { fatal: true }).decode(bytes), KINDS);
  } catch {
    return refuseFile('The file is neither a .refit file nor a refit.json in UTF-8.');
  }
}
