/** Whether an input reads what the output joined to it says: kind of output, level on and off, current, series resistor. */
import { byVerdict, WORST_FIRST } from '../../../quantity/verdict.ts';
import { capital } from '../../../quantity/words.ts';
import { type End, type Met, meet } from '../check/across.ts';
import { drivesOf } from '../check/drive.ts';
import { figure, found, type Rule, TIGHT } from '../check/rule.ts';
import { amps, list, ohms, terminalName, volts, watts } from '../check/say.ts';
import type { View } from '../check/view.ts';
import { type Margin, marginsOf, pullUpFor, seriesResistor } from '../levels.ts';
import { SOURCE } from '../sources.ts';
import type { Input, Terminal, Verdict, WiringFinding } from '../types.ts';
import { giveBehind } from './coil.ts';

/** A logic input wants this much in hand against noise, in V. */
const NOISE = 0.4;

export const levels: Rule = {
  id: 'levels',
  title: 'Does the input read what the output says?',
  of: ['input'],
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const input = terminal.nature as Input;
    if (input.leg === 'minus') return [];
    if (view.wiresAt(id).length === 0) {
      const other = terminal.with;
      if (input.leg !== 'plus' || other === null || view.wiresAt(other).length === 0) return [];
      return [
        found(
          levels,
          [id, other],
          'fails',
          `Only ${other} is connected; ${terminalName(view, id)} hangs in the air, so no current can flow.`,
          {
            remedy: `Connect ${id}.`,
          },
        ),
      ];
    }
    const ends = endsOf(view, terminal, input);
    if ('finding' in ends) return [ends.finding];
    const all = meet(ends.plus, ends.minus, input.pull, input.form === 'logic').map((met) =>
      judgeMet(view, terminal, input, met),
    );
    // Several outputs may work on one input: the worst of them counts.
    return all.length === 0 ? [] : [all.reduce((worst, each) => (rank(each) < rank(worst) ? each : worst))];
  },
};

const rank = ({ verdict, margin = 0 }: WiringFinding): number => WORST_FIRST.indexOf(verdict) * 1e7 + margin;

function endsOf(
  view: View,
  terminal: Terminal,
  input: Input,
): { readonly plus: End; readonly minus: End } | { readonly finding: WiringFinding } {
  const at = (id: string): End => ({ drives: drivesOf(view, id), rail: view.rail(id) });
  const other = input.leg === 'plus' ? terminal.with : terminal.common;
  if (other === null)
    return {
      finding: found(
        levels,
        [terminal.id],
        'unknown',
        `It is not written what ${terminalName(view, terminal.id)} is measured against.`,
        {
          needs: [`${terminal.id}.common`],
        },
      ),
    };
  const [own, far] = [at(terminal.id), at(other)];
  switch (input.form) {
    case 'sourcing':
      return { plus: far, minus: own };
    case 'opto': {
      if (input.leg === 'plus') return { plus: own, minus: far };
      const common = far.drives.find(({ how, ohms: through }) => how === 'fixed' && through === 0);
      if (!common)
        return {
          finding: found(
            levels,
            [terminal.id, other],
            'fails',
            `${terminalName(view, terminal.id)} works between itself and ${terminalName(view, other)}, and that common is not connected to a supply: no current can flow.`,
            {
              remedy: `Join ${other} to 0 V for sensors that give plus (PNP), or to +24 V for sensors that pull to minus (NPN).`,
            },
          ),
        };
      return (common.high ?? 0) > 0 ? { plus: far, minus: own } : { plus: own, minus: far };
    }
    default:
      return { plus: own, minus: far };
  }
}

function judgeMet(view: View, terminal: Terminal, input: Input, met: Met): WiringFinding {
  const { id } = terminal;
  const name = terminalName(view, id);
  const source = (drive: { readonly path: { readonly source: string } }) => drive.path.source;
  switch (met.kind) {
    case 'open':
      return found(
        levels,
        [id],
        'fails',
        `${name} is connected, but ${met.end === 'both' ? 'nothing drives either end of it' : met.end === 'plus' ? 'nothing gives it a voltage' : 'nothing takes its current back'}: what it reads is chance.`,
        {
          part: 'open',
          remedy:
            met.end === 'minus'
              ? 'Connect its other end, or its common, to 0 V.'
              : 'Connect the output that is meant to drive it.',
        },
      );
    case 'foreign':
      return found(
        levels,
        [id, source(met.by)],
        'fails',
        `${name} is joined to ${terminalName(view, source(met.by))}, which is no digital signal${met.by.how === 'ac' ? ' but an a.c. voltage that destroys it' : ''}.`,
        {
          remedy: 'Take that wire off.',
        },
      );
    case 'no-common':
      return found(
        levels,
        [id, source(met.by), source(met.other)],
        'fails',
        `${source(met.by) || name} and ${source(met.other)} have no common: nothing joins what their voltages count against, so no current finds its way back.`,
        { remedy: 'Join the 0 V of both, once.' },
      );
    case 'no-pull-up':
      return noPullUp(view, terminal, input, source(met.by));
    case 'same-way':
      return sameWay(view, terminal, input, source(met.by));
    case 'met': {
      const loose = floats(view, terminal, input, met);
      if (loose) return loose;
      if (
        met.by.how === 'sinking' &&
        met.by.withstands !== undefined &&
        (met.across.top ?? 0) > met.by.withstands
      )
        return found(
          levels,
          [id, source(met.by)],
          'fails',
          `While ${terminalName(view, source(met.by))} is off, ${volts(met.across.top!)} lie on it through ${name}, and it stands ${volts(met.by.withstands)}.`,
          {
            margin: met.by.withstands / met.across.top!,
            source: 'maximum rating of the output',
            remedy: 'Feed the input from a lower voltage, or put an opto board between them.',
          },
        );
      return judgeLevels(view, terminal, input, met);
    }
  }
}

/** A logic input that is let go and has nothing that brings it back, or something that holds it where it was. */
function floats(
  view: View,
  terminal: Terminal,
  input: Input,
  met: Extract<Met, { kind: 'met' }>,
): WiringFinding | undefined {
  if (input.form !== 'logic' || met.always || met.across.off !== null) return undefined;
  const about = [terminal.id, met.by.path.source, ...met.by.path.contacts];
  const name = terminalName(view, terminal.id);
  const what = met.contacts ? 'the contact opens' : `${met.by.path.source} is off`;
  if (input.pull && input.pull.to > 0)
    return found(
      levels,
      about,
      'fails',
      `${name} is pulled up inside, and ${met.by.path.source} only gives plus as well: it reads on whether ${what} or not.`,
      { remedy: 'Let the contact or output pull it to 0 V instead.' },
    );
  const rests = drivesOf(view, terminal.id).some(
    ({ how, ohms: through, path }) => how === 'fixed' && through > 0 && path.contacts.length === 0,
  );
  return rests || input.pull
    ? undefined
    : found(
        levels,
        about,
        'fails',
        `When ${what}, nothing holds ${name}: it floats, and reads what it picks up.`,
        {
          remedy: `Put a resistor of some kilohms (10 kΩ are usual) from ${terminal.id} to its 0 V.`,
        },
      );
}

function noPullUp(view: View, terminal: Terminal, input: Input, source: string): WiringFinding {
  const output = view.terminal(source)!.nature;
  if (input.form === 'sinking' || input.form === 'opto') return sameWay(view, terminal, input, source);
  const supply = input.rated;
  const window =
    output.kind === 'output' &&
    supply !== undefined &&
    input.on !== undefined &&
    output.swallows !== undefined
      ? pullUpFor({
          supply,
          on: input.on,
          low: output.low ?? 0.4,
          leaks: output.leaks ?? 1e-4,
          swallows: output.swallows,
        })
      : undefined;
  return found(
    levels,
    [terminal.id, source],
    'fails',
    `${terminalName(view, source)} can only pull the line down; nothing lifts it up again, so ${terminalName(view, terminal.id)} never reads high.`,
    {
      figures: window
        ? [figure('smallest pull-up', window.least, 'Ω'), figure('largest pull-up', window.most, 'Ω')]
        : [],
      source: 'derived: voltages round the loop',
      remedy: window
        ? `Put a resistor of ${ohms(window.ohms)} from ${terminal.id} to ${volts(supply!)}; ${ohms(window.least)} to ${ohms(window.most)} will do.`
        : `Put a pull-up resistor from ${terminal.id} to ${supply === undefined ? 'the supply of the input' : volts(supply)}.`,
    },
  );
}

function sameWay(view: View, terminal: Terminal, input: Input, source: string): WiringFinding {
  const output = view.terminal(source)!.nature;
  const pulls = output.kind === 'output' && output.stage === 'sinking';
  const says = pulls
    ? `${terminalName(view, source)} pulls to minus (NPN), and ${terminalName(view, terminal.id)} wants to be given plus: neither brings the current, so the input never switches on.`
    : `${terminalName(view, source)} gives plus (PNP), and ${terminalName(view, terminal.id)} gives its own current out and wants to be pulled to minus: nothing changes when the output switches.`;
  const common = terminal.common;
  return found(levels, [terminal.id, source], 'fails', says, {
    source:
      'common practice: sourcing outputs go with sinking inputs and sinking outputs with sourcing inputs',
    remedy:
      input.form === 'opto' && common !== null
        ? `Join ${common} to ${pulls ? 'plus' : '0 V'} if every sensor of this group is ${pulls ? 'NPN' : 'PNP'}; otherwise take a ${pulls ? 'PNP' : 'NPN'} sensor.`
        : pulls
          ? 'Take a PNP sensor, or an input that gives current (sourcing).'
          : 'Take an NPN sensor, or an input that takes current (sinking).',
  });
}

const SAY: Readonly<Record<Margin['name'], string>> = {
  on: 'on',
  off: 'off',
  survives: 'most it survives',
};

function judgeLevels(
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
      levels,
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
  return found(levels, about, worst.verdict, how + tight, {
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
  return found(levels, about, 'fails', sentence, {
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
