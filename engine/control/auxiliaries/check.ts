/** Checks one auxiliary: every state with no fault and with each single one, and its time-outs against the times it takes. */

import { formatQuantity } from '../../quantity/index.ts';
import type { Verdict } from '../../quantity/verdict.ts';
import { capital } from '../../quantity/words.ts';
import { compile, type Fault, faultsOf, sayFault } from './compile.ts';
import { type Explored, explore } from './explore.ts';
import type { AuxiliaryKind } from './kind.ts';
import type { Machine, Operation, Step } from './machine.ts';

export interface AuxiliaryFinding {
  /** 'hang turret forward.turn', stable as long as the settings are. */
  readonly id: string;
  readonly verdict: Verdict;
  readonly title: string;
  readonly sentence: string;
  readonly cure: string;
  /** Faults that bring it about, in words; empty where none is needed. */
  readonly faults: readonly string[];
  /** How it comes about, act by act. */
  readonly way: readonly string[];
  /** Settings that mend it. */
  readonly settings: readonly string[];
}

export interface Checked {
  readonly findings: readonly AuxiliaryFinding[];
  /** States gone through, all faults together. */
  readonly states: number;
  readonly faults: number;
  /** False where some search had to be cut short. */
  readonly whole: boolean;
}

/** Below this many times the usual time a time-out gives false alarms when oil is cold. Common practice, no source. */
const ROOMY = 1.5;
/** All searches of one auxiliary together: enough for a turret of 24 places that turns both ways. */
const MOST_STATES = 2_500_000;

interface Hit {
  readonly fault: Fault | null;
  readonly way: readonly string[];
}

function stepAt(machine: Machine, at: string): { operation: Operation; step: Step } | undefined {
  const [first, second] = at.split('.');
  const operation = machine.operations.find(({ id }) => id === first);
  const step = operation?.steps.find(({ id }) => id === second);
  return operation && step ? { operation, step } : undefined;
}

/** In pieces: yields the share done. */
export function* seekChecked(kind: AuxiliaryKind, machine: Machine): Generator<number, Checked> {
  const all: readonly (Fault | null)[] = [null, ...faultsOf(machine)];
  const hazards = new Map<string, Hit[]>();
  const hangs = new Map<string, Hit[]>();
  const rounds: Hit[] = [];
  let states = 0;
  let whole = true;
  const put = (into: Map<string, Hit[]>, id: string, hit: Hit): void => {
    into.set(id, [...(into.get(id) ?? []), hit]);
  };
  for (const [n, fault] of all.entries()) {
    const found: Explored = explore(compile(machine, fault), Math.min(200_000, MOST_STATES - states));
    states += found.states;
    whole &&= found.whole;
    for (const [id, way] of found.hazards) {
      // What happens without any fault needs none to be told.
      if (fault === null || !hazards.get(id)?.some((each) => each.fault === null))
        put(hazards, id, { fault, way });
    }
    for (const [step, way] of found.hangs) put(hangs, step, { fault, way });
    if (found.round) rounds.push({ fault, way: found.round.way });
    yield (n + 1) / all.length;
  }
  return {
    findings: [
      ...machine.operations.flatMap((operation) => timeFindings(operation)),
      ...[...hangs].map(([step, hits]) => hangFinding(kind, machine, step, hits)),
      ...(rounds.length > 0 ? [roundFinding(machine, rounds)] : []),
      ...machine.hazards.flatMap((hazard): AuxiliaryFinding[] => {
        const hits = hazards.get(hazard.id) ?? [];
        if (hits.length === 0)
          return whole
            ? [
                {
                  id: `never ${hazard.id}`,
                  verdict: 'fits',
                  title: capital(hazard.says),
                  sentence:
                    'That cannot come about, neither by stopping it in the middle nor by a power cut nor by any single fault looked at.',
                  cure: '',
                  faults: [],
                  way: [],
                  settings: [],
                },
              ]
            : [];
        const plain = hits[0]!.fault === null;
        const faults = hits.flatMap(({ fault }) => (fault ? [sayFault(machine, fault)] : []));
        return [
          {
            id: `hazard ${hazard.id}`,
            verdict: plain ? 'fails' : 'tight',
            title: capital(hazard.says),
            sentence: plain ? `It needs no fault: ${hazard.says}.` : `One fault is enough: ${hazard.says}.`,
            cure: hazard.cure,
            faults,
            way: hits[0]!.way,
            settings: [],
          },
        ];
      }),
      ...(whole
        ? []
        : [
            {
              id: 'cut-short',
              verdict: 'unknown' as const,
              title: 'Not everything was gone through',
              sentence: `With these settings there are more than ${states} states; the search was cut short. What it found holds; what it did not find may still be there.`,
              cure: 'Fewer positions or fewer inputs make it whole.',
              faults: [],
              way: [],
              settings: [],
            },
          ]),
    ],
    states,
    faults: all.length - 1,
    whole,
  };
}

export function checkAuxiliary(kind: AuxiliaryKind, machine: Machine): Checked {
  const search = seekChecked(kind, machine);
  for (;;) {
    const piece = search.next();
    if (piece.done) return piece.value;
  }
}

function hangFinding(
  kind: AuxiliaryKind,
  machine: Machine,
  at: string,
  hits: readonly Hit[],
): AuxiliaryFinding {
  const found = stepAt(machine, at);
  const name = found ? `“${found.step.says}”` : at;
  const setting = found?.step.limitSetting;
  const moving = found?.step.on?.length
    ? ` Meanwhile ${found.step.on.map((id) => `“${machine.outputs.find((each) => each.id === id)?.name ?? id}”`).join(' and ')} stays on.`
    : '';
  return {
    id: `hang ${at}`,
    verdict: 'fails',
    title: `It can hang in ${name}`,
    sentence: `It waits for ${found ? waitsFor(machine, found.step) : 'an input'} without a time-out, and nobody is told why it stands.${moving}`,
    cure: setting
      ? `Give it a time-out: ${kind.settings[setting]?.name ?? setting}. After it, outputs off and a message that names what did not come.`
      : 'Give it a time-out.',
    faults: hits.flatMap(({ fault }) => (fault ? [sayFault(machine, fault)] : [])),
    way: hits[0]!.way,
    settings: setting ? [setting] : [],
  };
}

function roundFinding(machine: Machine, hits: readonly Hit[]): AuxiliaryFinding {
  return {
    id: 'round',
    verdict: 'fails',
    title: 'It can go round for ever',
    sentence: 'It goes from step to step and never comes to an end or to a message.',
    cure: 'Count the tries and give up with a message.',
    faults: hits.flatMap(({ fault }) => (fault ? [sayFault(machine, fault)] : [])),
    way: hits[0]!.way,
    settings: [],
  };
}

function timeFindings({ id, name, steps }: Operation): AuxiliaryFinding[] {
  return steps.flatMap((step): AuxiliaryFinding[] => {
    const { limit, usual, limitSetting, says } = step;
    if (limit === undefined || limit === null || usual === undefined || usual === 0) return [];
    const margin = limit / usual;
    if (margin >= ROOMY) return [];
    const s = (seconds: number): string => formatQuantity(seconds, 's');
    return [
      {
        id: `time ${id}.${step.id}`,
        verdict: margin < 1 ? 'fails' : 'tight',
        title: `Time-out of “${says}”`,
        sentence:
          margin < 1
            ? `To ${name} it gives ${s(limit)}, but it can take ${s(usual)}: it gives up although all is well.`
            : `To ${name} it gives ${s(limit)}, and it can take ${s(usual)}: cold oil or low air, and it gives up although all is well.`,
        cure: `Give it ${s(2 * usual)} or so.`,
        faults: [],
        way: [],
        settings: limitSetting ? [limitSetting] : [],
      },
    ];
  });
}

/** What a step waits for, in words. */
export function waitsFor(machine: Machine, step: Step): string {
  if (step.untilSays) return step.untilSays;
  if (!step.until) return step.dwell ? `${formatQuantity(step.dwell, 's')} to pass` : 'nothing';
  return step.until
    .map(({ inputs }) =>
      Object.entries(inputs)
        .map(
          ([id, on]) => `“${machine.inputs.find((each) => each.id === id)?.name ?? id}” ${on ? 'on' : 'off'}`,
        )
        .join(' and '),
    )
    .join(', or ');
}
