/** Edits: applied, undone and folded. A refit is never changed in place; what an edit leaves alone is shared. */
import { own } from '../quantity/own.ts';
import { ok, type Problem, type Result, refuse } from '../quantity/types.ts';
import { brief } from './brief.ts';
import { conflictProblem } from './conflict.ts';
import { LIMITS } from './limits.ts';
import { compareChainIds } from './order.ts';
import { referenceProblem } from './references.ts';
import { same } from './same.ts';
import { BY_ID, type Namer } from './say.ts';
import type { Chain, Change, Edit, Place, Refit } from './types.ts';

/**
 * The refit after all changes of the edit, or a refusal that leaves it as it was: a ConflictProblem where something
 * else stands than the edit says it replaced, else what would no longer hold together.
 */
export function applyEdit(refit: Refit, edit: Pick<Edit, 'changes'>, namer: Namer = BY_ID): Result<Refit> {
  let after = refit;
  for (const change of edit.changes) {
    const next = applyChange(after, change, namer);
    if (!next.ok) return next;
    after = next.value;
  }
  // Parts of one edit may lean on each other, so only the end has to hold together.
  const structural = edit.changes.some(
    (change) =>
      change.do === 'part' ||
      change.do === 'place' ||
      change.do === 'chain' ||
      change.do === 'stop' ||
      isRecordChange(change) ||
      (change.do === 'fact' && change.new?.evidence !== undefined),
  );
  const problem = overfull(after, edit.changes) ?? (structural ? referenceProblem(after) : undefined);
  return problem ? refuse(problem) : ok(after);
}

/** Who undoes, when, and where in the log the undoing stands. */
export type UndoMeta = Pick<Edit, 'number' | 'who' | 'when' | 'basedOn'>;

/** The edit that takes `edit` back. */
export function undoOf(edit: Edit, meta: UndoMeta): Edit {
  const says = brief(`Undone: edit ${edit.number} (${edit.says})`, LIMITS.text);
  return { ...meta, changes: edit.changes.map(inverse).reverse(), says };
}

/** The state after all edits in turn; a refusal names the edit. Numbers must follow each other. */
export function foldEdits(start: Refit, edits: readonly Edit[]): Result<Refit> {
  let state = start;
  for (const [index, edit] of edits.entries()) {
    if (index > 0 && edit.number !== edits[index - 1]!.number + 1)
      return inEdit(edit, { code: 'malformed', message: 'it does not follow the number before.' });
    const next = applyEdit(state, edit);
    if (!next.ok) return inEdit(edit, next.problem);
    state = next.value;
  }
  return ok(state);
}

/** The state before all edits, from the state after them. */
export function unfoldEdits(end: Refit, edits: readonly Edit[]): Result<Refit> {
  let state = end;
  for (const edit of edits.toReversed()) {
    const before = applyEdit(state, { changes: edit.changes.map(inverse).reverse() });
    if (!before.ok) return inEdit(edit, before.problem);
    state = before.value;
  }
  return ok(state);
}

const inEdit = (edit: Edit, problem: Problem): Result<Refit> =>
  refuse({ ...problem, message: `Edit ${edit.number}: ${problem.message}` });

const inverse = (change: Change): Change => ({ ...change, old: change.new, new: change.old }) as Change;

function applyChange(refit: Refit, change: Change, namer: Namer): Result<Refit> {
  switch (change.do) {
    case 'fact': {
      const part = own(refit.parts, change.part);
      if (!part) return missing(`There is no part '${change.part}' in this refit.`, `parts.${change.part}`);
      const now = own(part.facts, change.fact) ?? null;
      if (!same(now, change.old)) return conflict(refit, change, namer);
      const facts = put(part.facts, change.fact, change.new);
      return ok({ ...refit, parts: { ...refit.parts, [part.id]: { ...part, facts } } });
    }
    case 'part': {
      const now = own(refit.parts, change.id) ?? null;
      if (!same(now, change.old)) return conflict(refit, change, namer);
      return ok({ ...refit, parts: put(refit.parts, change.id, change.new) });
    }
    case 'place':
      return applyPlace(refit, change, namer);
    case 'chain': {
      const now = refit.chains.find(({ id }) => id === change.id) ?? null;
      if (!same(now, change.old)) return conflict(refit, change, namer);
      if (change.new !== null && change.new.id !== change.id)
        return missing(
          `An axis keeps its name: ${change.id} cannot become ${change.new.id}.`,
          `chains.${change.id}.id`,
        );
      return ok({ ...refit, chains: putChain(refit.chains, change.id, change.new) });
    }
    case 'policy': {
      const now = own(refit.policies, change.policy) ?? null;
      if (now !== change.old) return conflict(refit, change, namer);
      return ok({ ...refit, policies: put(refit.policies, change.policy, change.new) });
    }
    case 'evidence':
    case 'tag':
    case 'keep':
    case 'survey':
    case 'work':
    case 'auxiliary':
      return applyRecord(refit, change, namer);
    case 'device':
    case 'wire':
    case 'cable':
      return applyWiring(refit, change, namer);
    case 'wiring-setting': {
      const { settings } = refit.wiring;
      if ((own(settings, change.setting) ?? null) !== change.old) return conflict(refit, change, namer);
      return ok({
        ...refit,
        wiring: { ...refit.wiring, settings: put(settings, change.setting, change.new) },
      });
    }
    case 'stop':
      if (!same(refit.stop, change.old)) return conflict(refit, change, namer);
      return ok({ ...refit, stop: change.new });
    case 'machine':
      if (refit.machine !== change.old) return conflict(refit, change, namer);
      return ok({ ...refit, machine: change.new });
    case 'title': {
      const now = { name: refit.name, about: refit.about };
      if (!same(now, change.old)) return conflict(refit, change, namer);
      return ok({ ...refit, ...change.new });
    }
  }
}

function applyPlace(refit: Refit, change: Extract<Change, { do: 'place' }>, namer: Namer): Result<Refit> {
  const chain = refit.chains.find(({ id }) => id === change.chain);
  if (change.chain !== null && !chain)
    return missing(`There is no axis ${change.chain} in this refit.`, `chains.${change.chain}`);
  const places = chain ? chain.places : refit.places;
  const now = own(places, change.place) ?? null;
  if (!same(now, change.old)) return conflict(refit, change, namer);
  const after: Readonly<Record<string, Place>> = put(places, change.place, change.new);
  return ok(
    chain
      ? { ...refit, chains: putChain(refit.chains, chain.id, { ...chain, places: after }) }
      : { ...refit, places: after },
  );
}

type RecordChange = Extract<Change, { do: keyof typeof RECORDS }>;

/** Changes that put one thing into a record of the refit or take it out, and the record each is for. */
const RECORDS = {
  evidence: 'evidence',
  tag: 'tags',
  keep: 'keeps',
  survey: 'survey',
  work: 'work',
  auxiliary: 'auxiliaries',
} as const;

const isRecordChange = (change: Change): change is RecordChange => Object.hasOwn(RECORDS, change.do);

function applyRecord(refit: Refit, change: RecordChange, namer: Namer): Result<Refit> {
  const field = RECORDS[change.do];
  const record: Readonly<Record<string, RecordChange['new']>> = refit[field];
  if (!same(own(record, change.id) ?? null, change.old)) return conflict(refit, change, namer);
  return ok({ ...refit, [field]: put(record, change.id, change.new) });
}

type WiringChange = Extract<Change, { do: keyof typeof WIRING_RECORDS }>;

const WIRING_RECORDS = { device: 'devices', wire: 'wires', cable: 'cables' } as const;

const isWiringChange = (change: Change): change is WiringChange => Object.hasOwn(WIRING_RECORDS, change.do);

function applyWiring(refit: Refit, change: WiringChange, namer: Namer): Result<Refit> {
  const field = WIRING_RECORDS[change.do];
  const record: Readonly<Record<string, WiringChange['new']>> = refit.wiring[field];
  if (!same(own(record, change.id) ?? null, change.old)) return conflict(refit, change, namer);
  // Checked here and not with the references, so that one wire's edit does not walk all wires.
  if (change.new !== null && change.new.id !== change.id)
    return missing(
      `wiring.${field}.${change.id}.id must be '${change.id}', the name it stands under.`,
      `wiring.${field}.${change.id}.id`,
    );
  return ok({ ...refit, wiring: { ...refit.wiring, [field]: put(record, change.id, change.new) } });
}

/** Counts that an edit may have pushed over what a file can hold. */
function overfull(refit: Refit, changes: readonly Change[]): Problem | undefined {
  const counts: [where: string, record: object, max: number][] = [];
  for (const change of changes) {
    if (change.do === 'fact') {
      const part = own(refit.parts, change.part);
      if (part) counts.push([`parts.${part.id}.facts`, part.facts, LIMITS.facts]);
    } else if (change.do === 'part') counts.push(['parts', refit.parts, LIMITS.parts]);
    else if (change.do === 'policy') counts.push(['policies', refit.policies, LIMITS.policies]);
    else if (change.do === 'chain') counts.push(['chains', refit.chains, LIMITS.chains]);
    else if (change.do === 'place') {
      const chain = refit.chains.find(({ id }) => id === change.chain);
      counts.push(['places', chain ? chain.places : refit.places, LIMITS.places]);
    } else if (isRecordChange(change)) {
      const field = RECORDS[change.do];
      counts.push([field, refit[field], LIMITS[field]]);
    } else if (isWiringChange(change)) {
      const field = WIRING_RECORDS[change.do];
      counts.push([`wiring.${field}`, refit.wiring[field], LIMITS[field]]);
    } else if (change.do === 'wiring-setting')
      counts.push(['wiring.settings', refit.wiring.settings, LIMITS.settings]);
  }
  const checked = new Set<object>();
  for (const [where, record, max] of counts) {
    if (checked.has(record)) continue;
    checked.add(record);
    if (Object.keys(record).length > max)
      return { code: 'out-of-domain', message: `${where} can hold at most ${max}.`, where };
  }
  return undefined;
}

function put<T>(
  record: Readonly<Record<string, T>>,
  key: string,
  value: T | null,
): Readonly<Record<string, T>> {
  if (value !== null) return { ...record, [key]: value };
  const { [key]: _removed, ...rest } = record;
  return rest;
}

function putChain(chains: readonly Chain[], id: string, chain: Chain | null): readonly Chain[] {
  if (chain === null) return chains.filter((other) => other.id !== id);
  if (chains.some((other) => other.id === id))
    return chains.map((other) => (other.id === id ? chain : other));
  const at = chains.findIndex((other) => compareChainIds(other.id, id) > 0);
  return chains.toSpliced(at < 0 ? chains.length : at, 0, chain);
}

const missing = (message: string, where: string): Result<Refit> =>
  refuse({ code: 'unknown-name', message, where });

const conflict = (refit: Refit, change: Change, namer: Namer): Result<Refit> =>
  refuse(conflictProblem(refit, change, namer));
