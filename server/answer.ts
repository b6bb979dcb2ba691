/** Answers: JSON, and refusals with the status that fits them. */
import type { Problem } from '../engine/quantity/types.ts';
import { conflictOf } from '../engine/refit/index.ts';
import type { Conflicted, Refused, WireCode, WireProblem } from '../engine/refit/wire.ts';
import { reasonOf, type TroubleReason } from '../store/index.ts';
import type { Answer } from './http.ts';

export const JSON_TYPE = 'application/json; charset=utf-8';

/** As JSON, never kept by a cache. */
export const json = (status: number, value: object, headers: Answer['headers'] = {}): Answer => ({
  status,
  headers: { 'content-type': JSON_TYPE, 'cache-control': 'no-store', ...headers },
  body: JSON.stringify(value),
});

/** A refusal in a whole sentence. */
export function refusal(
  status: number,
  code: WireCode,
  message: string,
  where?: string,
  headers?: Answer['headers'],
): Answer {
  const refused: Refused = { problem: { code, message, ...(where === undefined ? {} : { where }) } };
  return json(status, refused, headers);
}

const DISK: Readonly<Record<TroubleReason, readonly [status: number, code: WireCode]>> = {
  full: [507, 'disk'],
  unwritable: [507, 'disk'],
  'not-allowed': [507, 'disk'],
  closed: [503, 'closing'],
  'in-use': [503, 'disk'],
  damaged: [500, 'disk'],
  newer: [500, 'disk'],
  missing: [500, 'disk'],
};

/** A refusal of the store or the engine; `head` is the number of the newest edit, for conflicts. */
export function refusedBy(problem: Problem, head?: number): Answer {
  const conflict = conflictOf(problem);
  if (conflict) {
    const met: Conflicted = {
      problem: { ...onWire(problem), code: 'conflict' },
      now: conflict.now,
      ...(head === undefined ? {} : { head }),
    };
    return json(409, met);
  }
  // Only a refit that is not there is refused so.
  if (problem.code === 'unknown-name' && problem.where === 'refit')
    return refusal(404, 'not-found', problem.message);
  const reason = reasonOf(problem);
  const [status, code] = reason === undefined ? [422, problem.code] : DISK[reason];
  return json(status, { problem: { ...onWire(problem), code } } satisfies Refused);
}

/** The problem with what belongs to people, and nothing that is ours alone. */
export function onWire({ code, message, where, suggestion, readings }: Problem): WireProblem {
  return {
    code,
    message,
    ...(where === undefined ? {} : { where }),
    ...(suggestion === undefined ? {} : { suggestion }),
    ...(readings === undefined ? {} : { readings }),
  };
}
