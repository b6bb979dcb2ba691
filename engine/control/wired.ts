/** What the drawn wiring hangs on the control: what its outputs carry and which way, and what drives its inputs. */
import { checkWiring, type ReadWiring, readWiring, type Terminal } from '../circuit/wiring/index.ts';
import { andList } from '../quantity/words.ts';
import type { Refit } from '../refit/types.ts';
import { SIGNALS, type Signal, type SignalId } from './signals.ts';

export interface WiredOutput {
  /** 'A1.out3' */
  readonly terminal: string;
  /** What hangs on it: names of devices. */
  readonly carries: readonly string[];
  /** A; undefined where a current of what hangs on it is not known. */
  readonly amps: number | undefined;
  /** Pole it must put on its wire, the other end of what hangs on it lying on the other; undefined where that is not drawn. */
  readonly gives: 'plus' | 'minus' | undefined;
}

export interface WiredInput {
  readonly terminal: string;
  readonly sort: Extract<SignalId, 'switch-24v' | 'pnp-24v' | 'npn-24v'>;
  /** Name of what drives it. */
  readonly from: string;
  /** Chain whose drive it is, where it is one. */
  readonly driveOf: string | undefined;
}

export interface Wired {
  readonly outputs: readonly WiredOutput[];
  readonly inputs: readonly WiredInput[];
}

/** Of the 24 V terminals of every control in the wiring; empty lists where nothing is drawn at them. */
export function wiredAt(refit: Refit): Wired {
  const wiring = readWiring(refit.wiring, refit);
  const controls = [...wiring.devices.values()].filter(({ kind }) => kind === 'control');
  if (controls.length === 0) return { outputs: [], inputs: [] };
  const carried = new Map(
    checkWiring(refit.wiring, refit)
      .filter(({ rule }) => rule === 'output-current')
      .map((finding) => [finding.about[0]!, finding]),
  );
  const terminals = controls.flatMap((each) => each.terminals.map((id) => wiring.terminals.get(id)!));
  return {
    outputs: terminals.flatMap((terminal): WiredOutput[] => {
      if (terminal.nature.kind !== 'output' || terminal.group !== 'io') return [];
      const takers = takersOf(wiring, terminal);
      if (takers.length === 0) return [];
      const finding = carried.get(terminal.id);
      // What the output itself can do is another matter.
      const isOpen = finding?.needs?.some((need) => !need.startsWith(`${terminal.id}.`)) ?? true;
      return [
        {
          terminal: terminal.id,
          carries: [...new Set(takers.map(({ device }) => wiring.devices.get(device)!.name || device))],
          amps: isOpen ? undefined : finding?.figures.find(({ name }) => name === 'asked')?.value,
          gives: poleOf(wiring, takers),
        },
      ];
    }),
    inputs: terminals.flatMap((terminal): WiredInput[] => {
      if (terminal.nature.kind !== 'input' || terminal.group !== 'in') return [];
      const driven = driverOf(wiring, terminal);
      if (!driven) return [];
      const { sort, from, device } = driven;
      return [{ terminal: terminal.id, sort, from, driveOf: chainOf(refit, wiring, device) }];
    }),
  };
}

/** Everything joined to a terminal by wires, metal, fuses and switches that protect. */
function reach(wiring: ReadWiring, from: string): readonly Terminal[] {
  const seen = new Set<string>();
  const open = [from];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (seen.has(id)) continue;
    seen.add(id);
    open.push(...(wiring.netOf.get(id)?.terminals ?? []));
    const terminal = wiring.terminals.get(id);
    if (terminal?.nature.kind === 'protection' && terminal.with !== null) open.push(terminal.with);
  }
  return [...seen].flatMap((id) => wiring.terminals.get(id) ?? []);
}

/** Loads and inputs that hang on an output. */
const takersOf = (wiring: ReadWiring, output: Terminal): readonly Terminal[] =>
  reach(wiring, output.id).filter(
    ({ device, nature }) => device !== output.device && (nature.kind === 'load' || nature.kind === 'input'),
  );

/** The pole that all whose other end is drawn want; undefined where none is drawn, or they do not agree. */
function poleOf(wiring: ReadWiring, takers: readonly Terminal[]): WiredOutput['gives'] {
  const poles = new Set<string>();
  for (const { nature, with: far, common } of takers) {
    const other = nature.kind === 'input' && nature.leg === 'only' ? common : far;
    if (other === null) continue;
    for (const end of reach(wiring, other))
      if (end.nature.kind === 'supply') poles.add(end.nature.pole === 'minus' ? 'plus' : 'minus');
  }
  const [only, ...more] = poles;
  return more.length > 0 ? undefined : (only as WiredOutput['gives']);
}

/** What drives an input: an output that lifts or pulls, or a contact. */
function driverOf(
  wiring: ReadWiring,
  input: Terminal,
): { readonly sort: WiredInput['sort']; readonly from: string; readonly device: string } | undefined {
  const near = reach(wiring, input.id).filter(({ device }) => device !== input.device);
  const of = ({ device }: Terminal, sort: WiredInput['sort']) => ({
    sort,
    from: wiring.devices.get(device)!.name || device,
    device,
  });
  for (const each of near)
    if (each.nature.kind === 'output' && each.nature.stage !== 'push-pull')
      return of(each, each.nature.stage === 'sourcing' ? 'pnp-24v' : 'npn-24v');
  const contact = near.find(({ nature }) => nature.kind === 'contact');
  return contact && of(contact, 'switch-24v');
}

function chainOf(refit: Refit, wiring: ReadWiring, device: string): string | undefined {
  const part = wiring.devices.get(device)?.part ?? null;
  if (part === null) return undefined;
  return refit.chains.find(({ places }) =>
    [places.drive, places['spindle-drive']].some((at) => at?.chosen === part),
  )?.id;
}

const isWord = (text: string, word: string): boolean =>
  text
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .includes(word.toLowerCase());

/** Whether an input that is drawn is the one a signal of habit stands for: the fault of that drive, the home switch of that axis. */
function isOf({ from, driveOf }: WiredInput, signal: Signal): boolean {
  const [chain = '', what = ''] = signal.from.split(/ (?:spindle )?(?:drive|axis): /);
  if (what === 'fault') return driveOf === chain;
  const kind = /^(home|limit)/.exec(what)?.[1];
  return driveOf === undefined && kind !== undefined && isWord(from, chain) && isWord(from, kind);
}

/**
 * Signals counted by habit take the sort of what is drawn in their place. What somebody stated stays as stated; where more
 * sensors of a sort are drawn at the inputs than are counted, that is said.
 */
export function asDrawn(
  signals: readonly Signal[],
  { inputs }: Wired,
): { readonly signals: readonly Signal[]; readonly differs: readonly string[] } {
  const left = [...inputs];
  const sorted = signals.map((signal): Signal => {
    const at = signal.by === 'habit' ? left.findIndex((input) => isOf(input, signal)) : -1;
    const [input] = at < 0 ? [] : left.splice(at, 1);
    return input ? { ...signal, sort: input.sort, by: 'wiring' } : signal;
  });
  const differs = (['pnp-24v', 'npn-24v'] as const).flatMap((sort) => {
    const drawn = inputs.filter((each) => each.sort === sort);
    const counted = sorted.filter((each) => each.sort === sort).length;
    if (drawn.length <= counted) return [];
    const names = [...new Set(drawn.map(({ from }) => from))];
    return [
      `The wiring has ${drawn.length} of “${SIGNALS[sort].name}” (${andList(names)}), and ${counted === 0 ? 'none is' : `only ${counted} ${counted === 1 ? 'is' : 'are'}`} counted: what is stated of the sensors counts. Something between sensor and input may turn one sort into the other.`,
    ];
  });
  return { signals: sorted, differs };
}

/** What all outputs drawn must do, and the largest current, with the outputs that say so; absent where the wiring does not tell. */
export interface WiredNeeds {
  readonly gives?: { readonly pole: 'plus' | 'minus'; readonly why: string };
  readonly amps?: { readonly most: number; readonly why: string };
  /** Outputs of which the wiring does not tell the current. */
  readonly open: readonly string[];
}

export function outputsAsDrawn({ outputs }: Wired): WiredNeeds {
  const poles = [...new Set(outputs.flatMap(({ gives }) => gives ?? []))];
  const known = outputs.filter(({ amps }) => amps !== undefined && amps > 0);
  const most = known.reduce<WiredOutput | undefined>(
    (largest, each) => (largest && largest.amps! >= each.amps! ? largest : each),
    undefined,
  );
  return {
    ...(poles.length === 1
      ? {
          gives: {
            pole: poles[0]!,
            why: `as drawn, what hangs on ${andList(outputs.filter(({ gives }) => gives).map(({ terminal }) => terminal))} has its other wire at ${poles[0] === 'plus' ? 'minus' : 'plus'}`,
          },
        }
      : {}),
    ...(most
      ? { amps: { most: most.amps!, why: `as drawn, ${andList(most.carries)} hangs on ${most.terminal}` } }
      : {}),
    open: outputs.filter(({ amps }) => amps === undefined).map(({ terminal }) => terminal),
  };
}
