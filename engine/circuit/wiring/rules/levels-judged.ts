/** Volts and amperes of an input against those of the output that works on it: on, off, and what it survives. */
import { byVerdict } from '../../../quantity/verdict.ts';
import { capital } from '../../../quantity/words.ts';
import type { Met } from '../check/across.ts';
import { figure, found, TIGHT } from '../check/rule.ts';
import { amps, list, ohms, terminalName, volts, watts } from '../check/say.ts';
import type { View } from '../check/view.ts';
import { type Margin, marginsOf, seriesResistor } from '../levels.ts';
import { SOURCE } from '../sources.ts';
import type { Input, Terminal, Verdict, WiringFinding } from '../types.ts';
import { giveBehind } from './coil.ts';
import { LEVELS } from './levels-head.ts';

/** A logic input wants this much in hand against noise, in V. */
const NOISE = 0.4;

const SAY: Readonly<Record<Margin['name'], string>> = {
  on: 'on',
  off: 'off',
  survives: 'most it survives',
};

export function judgeLevels(
  view: View,
  terminal: Terminal,
  input: Input,
  met: Extract<Met, { kind: 'met' }>,
): WiringFinding {
  const { id } = terminal;
  // What lights the LED comes out of the supply that holds its plus end.
  const held = [met.by, met.other].find((each) => each?.how === 'fixed' && (each.high ?? 0) > 0);
  if (held && input.current !== undefined)
    view.give({ to: `supply:${held.path.source}`, amps: input.current });
  else if (met.by.how === 'sourcing' && input.current !== undefined) giveBehind(view, met.by, input.current);
  const source = met.by.path.source;
  const ways = [met.by, met.other].flatMap((each) => each?.path ?? []);
  const about = [
    id,
    source,
    ...ways.flatMap(({ contacts }) => contacts),
    ...ways.flatMap(({ resistors }) => resistors),
  ];
  const margins = marginsOf(input, met.across);
  const wants = met.always || met.contacts ? 2 : 3;
  const figures = margins.flatMap(({ name, capacity, demand, unit }) => [
    figure(`${SAY[name]}: there is`, capacity, unit === 'A' ? 'mA' : 'V'),
    figure(`${SAY[name]}: asked`, demand, unit === 'A' ? 'mA' : 'V'),
  ]);
  const reference =
    input.form === 'logic'
      ? 'definition of noise margins (common practice, no source)'
      : input.series !== undefined
        ? 'derived: voltages round the loop'
        : SOURCE.plc;
  const judged = margins.map((each) => ({ each, verdict: verdictFor(input, each) }));
  const worst = judged.reduce<(typeof judged)[number] | undefined>(
    (was, now) =>
      was === undefined ||
      byVerdict(now, was) < 0 ||
      (now.verdict === was.verdict && now.each.margin < was.each.margin)
        ? now
        : was,
    undefined,
  );
  const needs = missing(view, terminal, input, met);
  const drives = terminalName(view, source);
  const name = terminalName(view, id);
  if (worst && worst.verdict === 'fails')
    return failing(view, terminal, input, met, worst.each, figures, about);
  if (!worst || margins.length < wants || needs.some((each) => each.endsWith('.withstands')))
    return found(
      LEVELS,
      about,
      'unknown',
      `It cannot be said yet whether ${drives} suits ${name}: ${needs.length > 0 ? `${list(needs)} ${needs.length === 1 ? 'is' : 'are'} not known` : 'too little is known of either'}.`,
      { figures, needs, source: reference },
    );
  const on = margins.find((each) => each.name === 'on');
  const how = met.always
    ? `${name} is joined to ${drives} for good: it always reads on.`
    : met.contacts && met.inverted
      ? `${name} is pulled up to ${on ? amount(on, on.capacity) : 'its supply'} inside and goes low when the contacts to ${drives} close.`
      : met.contacts
        ? `${name} gets ${on ? amount(on, on.capacity) : 'its voltage'} from ${drives} while the contacts between are closed; it needs ${on ? amount(on, on.demand) : 'less'}.`
        : `${name} gets ${on ? amount(on, on.capacity) : 'enough'} when ${drives} is ${met.inverted ? 'off' : 'on'} and needs ${on ? amount(on, on.demand) : 'less'}.`;
  const tight =
    worst.verdict === 'tight'
      ? ` ${capital(SAY[worst.each.name])} it has little in hand: ${amount(worst.each, worst.each.capacity)} for ${amount(worst.each, worst.each.demand)}.`
      : '';
  return found(LEVELS, about, worst.verdict, how + tight, {
    margin: worst.each.margin,
    figures,
    source: reference,
    remedy: worst.verdict === 'tight' ? remedyFor(input, met, worst.each) : undefined,
  });
}

function verdictFor(input: Input, { name, unit, capacity, demand, margin }: Margin): Verdict {
  if (margin < 1) return 'fails';
  if (name === 'survives') return 'fits';
  // Leakage and what an input ignores are both limits of the standard: to keep them is enough.
  if (name === 'off' && unit === 'A') return 'fits';
  if (input.form === 'logic' && unit === 'V') return capacity - demand < NOISE - 1e-9 ? 'tight' : 'fits';
  return margin < TIGHT ? 'tight' : 'fits';
}

const amount = ({ unit }: Margin, value: number): string => (unit === 'A' ? amps(value) : volts(value));

function failing(
  view: View,
  terminal: Terminal,
  input: Input,
  met: Extract<Met, { kind: 'met' }>,
  worst: Margin,
  figures: WiringFinding['figures'],
  about: readonly string[],
): WiringFinding {
  const name = terminalName(view, terminal.id);
  const drives = terminalName(view, met.by.path.source);
  const sentence =
    worst.name === 'survives'
      ? `${drives} puts up to ${volts(worst.demand)} on ${name}, which survives ${volts(worst.capacity)}: it is destroyed.`
      : worst.name === 'on'
        ? `${name} needs ${amount(worst, worst.demand)} to read on, and gets ${amount(worst, worst.capacity)} from ${drives}.`
        : met.across.off === null
          ? `While ${drives} is off it still leaks ${amps(worst.demand)}, and ${name} is only surely off below ${amps(worst.capacity)}.`
          : `While ${drives} is off, ${amount(worst, worst.demand)} remain at ${name}, which is only surely off below ${amount(worst, worst.capacity)}: it never goes off.`;
  return found(LEVELS, about, 'fails', sentence, {
    margin: worst.margin,
    figures,
    source: worst.name === 'survives' ? 'maximum rating of the input' : 'derived: voltages round the loop',
    remedy: remedyFor(input, met, worst),
  });
}

function remedyFor(input: Input, met: Extract<Met, { kind: 'met' }>, worst: Margin): string {
  const { top, on } = met.across;
  if (worst.name === 'survives') {
    const resistor =
      top !== undefined && input.rated !== undefined && input.form !== 'logic'
        ? seriesResistor(on ?? top, input.rated, input.current)
        : undefined;
    return resistor
      ? `Put a resistor of ${ohms(resistor.ohms)}, ${watts(resistor.rating)}, in series (worked out: ${ohms(resistor.exact)}, it burns ${watts(resistor.watts)}).`
      : 'Put an opto board or a level changer between them; a resistor does not save a logic input.';
  }
  if (worst.name === 'on')
    return input.form === 'logic'
      ? 'Put a buffer with TTL inputs and 5 V outputs (HCT) between them.'
      : 'Drive it from a higher voltage, or through a buffer or an opto board made for this input.';
  if (met.across.off === null && input.off !== undefined && met.across.leaks !== undefined)
    return `Put a resistor of at most ${ohms(input.off / met.across.leaks)} across the input to swallow what leaks.`;
  return 'Drive it with an output that lets go (open collector), or with the voltage the input is made for.';
}

function missing(
  view: View,
  terminal: Terminal,
  input: Input,
  met: Extract<Met, { kind: 'met' }>,
): readonly string[] {
  const needs: string[] = [];
  const source = met.by.path.source;
  if (input.on === undefined && input.series === undefined) needs.push(`${terminal.id}.on-level`);
  if (input.most === undefined) needs.push(`${terminal.id}.most`);
  for (const id of [source, met.other?.path.source ?? '']) {
    const nature = id === '' ? undefined : view.terminal(id)?.nature;
    if (nature?.kind === 'supply' && nature.volts === undefined) needs.push(`${id}.volts`);
    if (nature?.kind === 'output') {
      if (nature.stage !== 'sinking' && nature.high === undefined) needs.push(`${id}.high`);
      if (nature.stage === 'sinking' && nature.low === undefined) needs.push(`${id}.low`);
      if (nature.stage === 'push-pull' && nature.low === undefined) needs.push(`${id}.low`);
    }
  }
  if (met.by.how === 'sinking' && met.by.withstands === undefined && (met.across.top ?? 0) > 5.5)
    needs.push(`${source}.withstands`);
  if (met.across.off === null && !met.contacts && met.across.leaks === undefined)
    needs.push(`${source}.leaks`);
  return [...new Set(needs)];
}
