/** An auxiliary of a refit with its kind, its settings read and its machine. */

import { nearest } from '../../quantity/nearest.ts';
import { ok, type Problem, type Result, refuse } from '../../quantity/types.ts';
import type { Auxiliary, Refit } from '../../refit/types.ts';
import { type AuxiliaryFinding, type Checked, seekChecked } from './check.ts';
import { type Interlocked, interlockFindings, readAsks } from './interlocks.ts';
import type { AuxiliaryKind } from './kind.ts';
import { KINDS, kindOf } from './kinds/index.ts';
import type { Machine } from './machine.ts';
import { type Read, readSettings } from './settings.ts';

export interface Opened {
  readonly auxiliary: Auxiliary;
  readonly kind: AuxiliaryKind;
  readonly read: Read;
  readonly machine: Machine;
}

/** A refusal names the auxiliary and its setting. */
export function openAuxiliary(auxiliary: Auxiliary): Result<Opened> {
  const kind = kindOf(auxiliary.kind);
  if (!kind) {
    const names = KINDS.map(({ id }) => id);
    const near = nearest(auxiliary.kind.slice(0, 60), names);
    return refuse({
      code: 'unknown-name',
      where: auxiliary.id,
      message: `There is no kind of auxiliary “${auxiliary.kind.slice(0, 60)}”. ${near ? `Did you mean “${near}”? ` : ''}There are: ${names.join(', ')}.`,
    });
  }
  const read = readSettings(kind.settings, auxiliary.settings);
  if (!read.ok) return refuse({ ...read.problem, where: `${auxiliary.id}.${read.problem.where ?? ''}` });
  return ok({ auxiliary, kind, read: read.value, machine: kind.make(read.value) });
}

export interface AuxiliaryReport {
  readonly auxiliary: Auxiliary;
  /** Absent where its kind or a setting cannot be read. */
  readonly opened?: Opened;
  readonly problem?: Problem;
  readonly checked?: Checked;
}

export interface AuxiliariesReport {
  readonly each: readonly AuxiliaryReport[];
  /** Of several together. */
  readonly together: readonly AuxiliaryFinding[];
}

const rank = ({ kind }: Auxiliary): number => {
  const at = KINDS.findIndex(({ id }) => id === kind);
  return at < 0 ? KINDS.length : at;
};

/** All auxiliaries as they can be read, in the order of the kinds, without going through them: at once. */
export const openAll = (refit: Refit): readonly AuxiliaryReport[] =>
  Object.values(refit.auxiliaries)
    .sort((a, b) => rank(a) - rank(b) || (a.id < b.id ? -1 : 1))
    .map((auxiliary) => {
      const opened = openAuxiliary(auxiliary);
      return opened.ok ? { auxiliary, opened: opened.value } : { auxiliary, problem: opened.problem };
    });

/** What auxiliaries ask of each other, and what cannot be read of it. */
export function together(reports: readonly AuxiliaryReport[]): {
  readonly findings: readonly AuxiliaryFinding[];
  readonly problems: ReadonlyMap<string, Problem>;
} {
  const all = reports.flatMap(({ opened }) => (opened ? [opened] : []));
  const problems = new Map<string, Problem>();
  const locked = all.map((opened): Interlocked => {
    const asks = readAsks(opened, all, opened.read.choice('only-when'));
    if (!asks.ok) problems.set(opened.auxiliary.id, asks.problem);
    return { opened, asks: asks.ok ? asks.value : [] };
  });
  return { findings: interlockFindings(locked), problems };
}

/** Goes through every auxiliary, in pieces: yields the share done. `only`: the id of one. */
export function* seekAuxiliaries(refit: Refit, only?: string): Generator<number, AuxiliariesReport> {
  const reports = openAll(refit);
  const { findings, problems } = together(reports);
  const each: AuxiliaryReport[] = [];
  for (const [n, report] of reports.entries()) {
    const problem = report.problem ?? problems.get(report.auxiliary.id);
    if (!report.opened || (only !== undefined && report.auxiliary.id !== only)) {
      each.push(problem ? { ...report, problem } : report);
      continue;
    }
    const search = seekChecked(report.opened.kind, report.opened.machine);
    let piece = search.next();
    for (; !piece.done; piece = search.next()) yield (n + piece.value) / reports.length;
    each.push({ ...report, ...(problem ? { problem } : {}), checked: piece.value });
  }
  return { each, together: findings };
}

export function checkAuxiliaries(refit: Refit, only?: string): AuxiliariesReport {
  const search = seekAuxiliaries(refit, only);
  for (;;) {
    const piece = search.next();
    if (piece.done) return piece.value;
  }
}
