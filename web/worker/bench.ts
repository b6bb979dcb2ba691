/** Bench tests in the worker: what there are, what readings come to, and what recording them would change. */
import {
  METHOD,
  METHODS,
  type Method,
  type Outcome,
  recordEvidence,
  runMethod,
} from '../../engine/evidence/index.ts';
import { ok, type Result, refuse } from '../../engine/quantity/index.ts';
import type { Change, Refit } from '../../engine/refit/types.ts';
import type { BenchAnswer, BenchAsk, BenchRecording, BenchSheet, Measured } from './bench-protocol.ts';

/** A function does not travel. */
const sheetOf = ({ run: _, ...sheet }: Method): BenchSheet => sheet;

const find = (id: string): Result<Method> => {
  const method = METHOD.get(id);
  return method ? ok(method) : refuse({ code: 'unknown-name', message: 'There is no such bench test.' });
};

export function bench(refit: Refit, ask: BenchAsk): BenchAnswer {
  if (ask.do === 'list') return { sheets: METHODS.map(sheetOf) };
  const method = find(ask.method);
  if (!method.ok) return { outcome: method };
  if (ask.do === 'run') return { outcome: runMethod(method.value, ask.taken) as Result<Outcome> };
  return { recording: recording(refit, method.value, ask.measured) };
}

function recording(refit: Refit, method: Method, measured: Measured): Result<BenchRecording> {
  const recorded = recordEvidence(refit, { ...measured, method });
  if (!recorded.ok) return recorded;
  const { changes, evidence, paths, questions, askBack } = recorded.value;
  if (measured.again === undefined) return ok({ id: evidence.id, changes, paths, questions, askBack });
  const id = measured.again;
  return ok({ id, changes: again(refit, changes, evidence.id, id), paths, questions, askBack });
}

/** The same changes upon a measurement that is there already; facts it no longer settles are forgotten. */
function again(refit: Refit, changes: readonly Change[], fresh: string, id: string): Change[] {
  const renamed = changes.map((change): Change => {
    if (change.do === 'evidence' && change.id === fresh && change.new)
      return { ...change, id, old: refit.evidence[id] ?? null, new: { ...change.new, id } };
    if (change.do === 'fact' && change.new?.evidence === fresh)
      return { ...change, new: { ...change.new, evidence: id } };
    return change;
  });
  const set = new Set(renamed.flatMap((each) => (each.do === 'fact' ? [`${each.part}.${each.fact}`] : [])));
  const dropped = Object.values(refit.parts).flatMap((part) =>
    Object.entries(part.facts).flatMap(([fact, old]): Change[] =>
      old.evidence === id && !set.has(`${part.id}.${fact}`)
        ? [{ do: 'fact', part: part.id, fact, old, new: null }]
        : [],
    ),
  );
  return [...renamed, ...dropped];
}
