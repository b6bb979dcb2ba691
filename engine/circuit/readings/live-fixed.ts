/** What of a wiring under power does not depend on what is on: loads, inputs, windings, diodes, fuses. */
import { diodeOf, type Element } from '../network/index.ts';
import { pairsOf } from '../power/conductors.ts';
import type { Input, Load, ReadWiring, Terminal } from '../wiring/types.ts';

export const METAL = 0.01;
/** What an LED in an input loses, at some milliamperes: common practice, no source. */
const LED = { volts: 1.2, amps: 5e-3, emission: 2 };
/** Where a current is not said: a 24 V input of type 1 or 3 takes 2 mA at least (IEC 61131-2). */
const INPUT_OHMS = 5e3;
const LOGIC_OHMS = 100e3;
const SOME_LOAD_AMPS = 0.1;

export const nodeIn =
  (wiring: ReadWiring) =>
  (id: string): string =>
    wiring.netOf.get(id)?.id ?? id;

export const ohm = (id: string, a: string, b: string, ohms: number): Element => ({
  kind: 'resistor',
  id,
  a,
  b,
  ohms,
});

/** Loads, inputs, windings, diodes, resistors, fuses. */
export function fixedElements(wiring: ReadWiring): readonly Element[] {
  const node = nodeIn(wiring);
  const made: Element[] = [];
  const add = (element: Element): void => {
    const [a, b] =
      element.kind === 'diode'
        ? [element.anode, element.cathode]
        : 'a' in element
          ? [element.a, element.b]
          : ['', ' '];
    if (a !== b) made.push(element);
  };
  for (const [one, other] of pairsOf(wiring, () => true)) {
    const [a, b] = [node(one.id), node(other.id)];
    const { nature } = one;
    if (nature.kind === 'protection' || (nature.kind === 'mains' && nature.side === 'passes'))
      add(ohm(`whole ${one.id}`, a, b, METAL));
    else if (nature.kind === 'load') add(ohm(`load ${one.id}`, a, b, loadOhms(nature)));
    else if (nature.kind === 'resistor' && nature.ohms !== undefined && nature.ohms > 0)
      add(ohm(`resistor ${one.id}`, a, b, nature.ohms));
    else if (nature.kind === 'winding' && nature.side === 'primary') add(ohm(`winding ${one.id}`, a, b, 1e4));
    else if (nature.kind === 'diode') {
      const [anode, cathode] = nature.leg === 'anode' ? [a, b] : [b, a];
      add(diodeOf(`diode ${one.id}`, anode, cathode, { volts: 0.8, amps: 0.5, emission: 1.5 }));
    } else if (nature.kind === 'input' && nature.form === 'opto' && other.nature.kind === 'input') {
      const [plus, minus] = nature.leg === 'minus' ? [b, a] : [a, b];
      made.push(...ledInput(one.id, plus, minus, nature));
    } else if (nature.kind === 'analogue-input' || nature.kind === 'differential-input') {
      const across = nature.kind === 'analogue-input' ? nature.ohms : nature.termination;
      add(ohm(`across ${one.id}`, a, b, across ?? LOGIC_OHMS));
    }
  }
  for (const terminal of wiring.terminals.values()) {
    const { nature } = terminal;
    if (nature.kind === 'input' && nature.leg === 'only' && terminal.common !== null)
      made.push(...singleInput(terminal, nature, node(terminal.id), node(terminal.common)));
    else if (nature.kind === 'motor-phase' && nature.side === 'takes')
      add(ohm(`winding ${terminal.id}`, node(terminal.id), `inside ${terminal.device}`, 1));
  }
  return made;
}

function loadOhms(load: Load): number {
  const { ohms, volts = 24, amps, watts } = load;
  const current = amps ?? (watts === undefined ? SOME_LOAD_AMPS : watts / volts);
  return Math.max(0.1, ohms ?? volts / current);
}

/** An LED with its resistor; either way round where its common takes either. */
function ledInput(id: string, plus: string, minus: string, input: Input): readonly Element[] {
  const series = input.series ?? seriesOf(input);
  if (plus === minus) return [];
  return [
    ohm(`series ${id}`, plus, `led ${id}`, series),
    diodeOf(`led ${id}`, `led ${id}`, minus, LED),
    // Damaging backwards voltages are seen by the rules; the LED only blocks here.
  ];
}

function seriesOf({ rated, current, on, onCurrent }: Input): number {
  if (rated !== undefined && current !== undefined && current > 0)
    return Math.max(1, (rated - LED.volts) / current);
  if (on !== undefined && onCurrent !== undefined && onCurrent > 0)
    return Math.max(1, (on - LED.volts) / onCurrent);
  return INPUT_OHMS;
}

function singleInput(terminal: Terminal, input: Input, at: string, common: string): readonly Element[] {
  const { id } = terminal;
  if (at === common) return [];
  if (input.form === 'opto')
    // Takes either way round: two LEDs back to back.
    return [
      ohm(`series ${id}`, at, `led ${id}`, seriesOf(input)),
      diodeOf(`led ${id}`, `led ${id}`, common, LED),
      diodeOf(`led back ${id}`, common, `led ${id}`, LED),
    ];
  if (input.pull)
    return [
      {
        kind: 'voltage',
        id: `pull source ${id}`,
        plus: `pull ${id}`,
        minus: common,
        volts: input.pull.to,
        ohms: 1,
      },
      ohm(`pull ${id}`, `pull ${id}`, at, input.pull.ohms),
    ];
  return [ohm(`input ${id}`, at, common, input.form === 'logic' ? LOGIC_OHMS : seriesOf(input))];
}
