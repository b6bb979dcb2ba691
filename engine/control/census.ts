/** Every input and output the machine asks of its control. */
import { POLICY } from '../checks/policies.ts';
import { parseQuantity } from '../quantity/index.ts';
import type { Refit } from '../refit/types.ts';
import { openAll } from './auxiliaries/open.ts';
import { chainFacts, jobFacts } from './facts.ts';
import type { Signal, SignalId } from './signals.ts';
import { asDrawn, type Wired, wiredAt } from './wired.ts';

/** What a person changed it to, else what is usual; a text that cannot be read counts as not changed. */
export function policyOf(refit: Refit, id: string): number {
  const policy = POLICY.get(id)!;
  const typed = Object.hasOwn(refit.policies, id)
    ? parseQuantity(refit.policies[id]!, policy.unit)
    : undefined;
  const read = typed?.ok && typed.value.value >= 0 ? typed : parseQuantity(policy.usual, policy.unit);
  return read.ok ? read.value.value : 0;
}

export interface Census {
  readonly signals: readonly Signal[];
  /** What could add to it and is not known, in sentences. */
  readonly unsure: readonly string[];
}

/** Signals that several auxiliaries ask for and one wire brings. */
const SHARED = new Set(['standstill', 'shut']);

export function censusOf(refit: Refit, wired: Wired = wiredAt(refit)): Census {
  const signals: Signal[] = [];
  const unsure: string[] = [];
  const add = (sort: SignalId, from: string, by: Signal['by'] = 'refit', n = 1): void => {
    for (let k = 0; k < n; k++) signals.push({ sort, from, by });
  };
  const axes = refit.chains.filter(({ kind }) => kind === 'axis');
  const perAxis = Math.round(policyOf(refit, 'axis-inputs'));
  for (const { id } of axes) {
    const facts = chainFacts(refit, id);
    const command = facts.choice('drive', 'command');
    if (command === 'pulses') add('pulses', `${id} drive: step and direction`);
    else if (command === 'volts') {
      add('10v-both', `${id} drive: speed`);
      add('encoder', `${id} feedback`);
    } else
      unsure.push(`How the ${id} drive is commanded is not known: pulses, or ±10 V with an encoder input.`);
    add('switch-24v', `${id} drive: fault`, 'habit');
    for (let n = 0; n < perAxis; n++)
      add(
        'switch-24v',
        `${id} axis: ${['home switch', 'limit switches', 'second limit switch'][n] ?? `switch ${n + 1}`}`,
        'habit',
      );
  }
  for (const { id } of refit.chains.filter(({ kind }) => kind === 'spindle')) {
    const facts = chainFacts(refit, id);
    const name = `${id} spindle`;
    switch (facts.choice('spindle-drive', 'command')) {
      case 'volts':
        add('10v', `${name} drive: speed`);
        add('contact', `${name} drive: forward`);
        add('contact', `${name} drive: reverse`);
        break;
      case 'both-volts':
        add('10v-both', `${name} drive: speed`);
        add('contact', `${name} drive: enable`);
        break;
      case 'pulses':
        add('pulses', `${name} drive: step and direction`);
        break;
      case 'contacts':
        add('contact', `${name} drive: forward`);
        add('contact', `${name} drive: reverse`);
        unsure.push(`${name}: each fixed speed may take one more contact.`);
        break;
      case 'serial':
      case 'hand':
        break;
      default:
        if (facts.choice('spindle-drive', 'type') === 'line') {
          add('24v', `${name}: contactor forward`);
          add('24v', `${name}: contactor reverse`);
        } else unsure.push(`How the drive of the ${name} is commanded is not known.`);
    }
    if (facts.choice('spindle-drive', 'type') !== 'line') add('switch-24v', `${name} drive: fault`, 'habit');
    const feedback = facts.choice('spindle-feedback', 'type');
    if (feedback === 'encoder') add('encoder', `${name}: encoder`);
    else if (feedback === 'pulse') add('switch-24v', `${name}: one pulse a turn`);
    else if (feedback === undefined && facts.fitted('spindle-feedback') !== false)
      unsure.push(`Whether an encoder sits on the ${name} is not known; threads need one.`);
  }
  stopSignals(refit, add);
  const shared = new Set<string>();
  for (const { auxiliary, opened, problem } of openAll(refit)) {
    if (!opened) {
      unsure.push(`${auxiliary.name} cannot be read: ${problem?.message ?? ''}`);
      continue;
    }
    const { machine, read } = opened;
    const sensor = ({ pnp: 'pnp-24v', npn: 'npn-24v' } as const)[read.choice('sensors')] ?? 'switch-24v';
    for (const { id, name, inside } of machine.inputs) {
      if (inside || shared.has(id)) continue;
      if (SHARED.has(id)) shared.add(id);
      add(id === 'standstill' ? 'switch-24v' : sensor, `${auxiliary.name}: ${name}`);
    }
    for (const { name } of machine.outputs)
      add(read.choice('outputs-by') as SignalId, `${auxiliary.name}: ${name}`);
  }
  const job = jobFacts(refit);
  add('switch-24v', 'wanted besides', 'wish', Math.min(1000, Math.round(job.value('inputs-besides') ?? 0)));
  add('24v', 'wanted besides', 'wish', Math.min(1000, Math.round(job.value('outputs-besides') ?? 0)));
  const drawn = asDrawn(signals, wired);
  return { signals: drawn.signals, unsure: [...unsure, ...drawn.differs] };
}

/** What the stop circuit takes of the control: the wires that end at it. */
function stopSignals(refit: Refit, add: (sort: SignalId, from: string, by?: Signal['by']) => void): void {
  const controls = Object.values(refit.stop?.elements ?? {}).filter(({ kind }) => kind === 'control');
  const ends = new Set(Object.values(refit.stop?.wires ?? {}).flatMap(({ from, to }) => [from, to]));
  let enabled = false;
  for (const { id, name } of controls) {
    if (ends.has(`${id}.enable`)) {
      add('24v', `${name}: enable, to the stop circuit`);
      enabled = true;
    }
    if (ends.has(`${id}.stop`)) add('switch-24v', `${name}: stop, from the stop circuit`);
  }
  if (!enabled && refit.chains.length > 0) add('24v', 'Enable of the drives', 'habit');
}

const cell = (text: string): string => (/[",;\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
/** A spreadsheet would run a cell that begins so. */
const harmless = (text: string): string => (/^[=+@\t-]/.test(text) ? `'${text}` : text);

/** One row a signal: way, sort, what it is for, why it is counted. */
export function censusCsv(census: Census, says: (signal: Signal) => readonly string[]): string {
  const rows = [
    ['way', 'level', 'from', 'counted because'],
    ...census.signals.map((signal) => [...says(signal)]),
  ];
  return `${rows.map((row) => row.map((each) => cell(harmless(each))).join(',')).join('\r\n')}\r\n`;
}
