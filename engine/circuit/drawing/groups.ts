/** Which symbols a device is drawn with: from what its terminals are, whatever its kind is called. */
import type { Device, Nature, ReadWiring, Terminal } from '../wiring/types.ts';
import { markOf } from './measure.ts';
import type { SymbolName } from './symbols/index.ts';
import type { TerminalGroup } from './types.ts';

export function groupsOf(device: Device, { terminals }: ReadWiring): readonly TerminalGroup[] {
  const own = device.terminals.flatMap((id) => terminals.get(id) ?? []);
  const done = new Set<string>();
  const groups: TerminalGroup[] = [];
  const poles = new Map<SymbolName, (readonly [string, string])[]>();
  for (const terminal of own) {
    if (done.has(terminal.id)) continue;
    const symbol = poleSymbol(device, terminal, own);
    const other = terminal.with === null ? undefined : terminals.get(terminal.with);
    if (symbol && other && other.device === device.id && !done.has(other.id)) {
      done.add(terminal.id).add(other.id);
      poles.set(symbol, [...(poles.get(symbol) ?? []), [terminal.id, other.id]]);
    }
  }
  for (const [symbol, pairs] of poles) {
    // Coils and lamps stand alone; what one movement moves stands together.
    if (TOGETHER.has(symbol)) groups.push({ symbol, poles: pairs });
    else groups.push(...pairs.map((pair): TerminalGroup => ({ symbol, poles: [pair] })));
  }
  const rest = own.filter(({ id }) => !done.has(id));
  const points = rest.filter((each) => isPoint(each, own));
  const bySymbol = new Map<SymbolName, string[]>();
  for (const each of points) {
    const symbol = pointSymbol(device, each.nature);
    bySymbol.set(symbol, [...(bySymbol.get(symbol) ?? []), each.id]);
  }
  // The screws of an earth bar are one piece of metal.
  for (const [symbol, ids] of bySymbol)
    groups.push(
      symbol === 'earth' && ids.length > 1
        ? { symbol, box: ids }
        : { symbol, points: ids, ...bridgesOf(device, ids) },
    );
  const boxed = rest.filter((each) => !points.includes(each));
  if (boxed.length > 0)
    groups.push({
      symbol: boxSymbol(device, own),
      box: boxed.map(({ id }) => id),
      takes: boxed.filter(({ nature }) => TAKES.has(nature.kind)).map(({ id }) => id),
      fed: boxed.filter(({ nature }) => isFed(nature)).map(({ id }) => id),
      signs: Object.fromEntries(
        boxed.flatMap(({ id, nature }) => {
          const sign = signOf(nature);
          return sign ? [[id, sign] as const] : [];
        }),
      ),
    });
  return groups;
}

const TAKES: ReadonlySet<string> = new Set(['input', 'differential-input', 'analogue-input', 'feed']);

/** Of each point the marks of those that metal inside joins to it. */
function bridgesOf({ joins }: Device, ids: readonly string[]): { bridged?: Record<string, string> } {
  if (joins.length === 0) return {};
  const set = new Map(ids.map((id) => [id, new Set([id])]));
  for (const { a, b } of joins) {
    const [one, other] = [set.get(a), set.get(b)];
    if (!one || !other || one === other) continue;
    for (const each of other) {
      one.add(each);
      set.set(each, one);
    }
  }
  const bridged = ids.flatMap((id): [string, string][] => {
    const others = [...set.get(id)!].filter((each) => each !== id).map(markOf);
    const said =
      others.length > MANY
        ? `${others.slice(0, MANY).join(', ')} and ${others.length - MANY} more`
        : others.join(', ');
    return others.length > 0 ? [[id, said]] : [];
  });
  return { bridged: Object.fromEntries(bridged) };
}

/** So many marks of bridged points are written out. */
const MANY = 6;

const isFed = (nature: Nature): boolean =>
  nature.kind === 'feed' ||
  nature.kind === 'earth' ||
  (nature.kind === 'mains' && nature.side === 'takes') ||
  (nature.kind === 'rectifier' && nature.leg === 'ac') ||
  (nature.kind === 'winding' && nature.side === 'primary');

const TOGETHER: ReadonlySet<SymbolName> = new Set([
  'contact-main',
  'isolator',
  'breaker',
  'motor-breaker',
  'overload',
  'residual-current',
]);

/** The symbol of what lies between a terminal and its other end; undefined where nothing to draw lies there. */
function poleSymbol(
  { kind }: Device,
  { nature }: Terminal,
  own: readonly Terminal[],
): SymbolName | undefined {
  switch (nature.kind) {
    case 'contact': {
      const opens = nature.closes === 'when-off';
      if (nature.moved === 'hand')
        return /mushroom|emergency/.test(kind)
          ? 'mushroom'
          : nature.role === 'main'
            ? 'isolator'
            : opens
              ? 'button-break'
              : 'button';
      if (nature.moved === 'machine') return opens ? 'limit-switch-break' : 'limit-switch';
      if (nature.role === 'main') return 'contact-main';
      return opens ? 'contact-break' : 'contact-make';
    }
    case 'load':
      return nature.what === 'coil' && nature.suppressor ? SUPPRESSED[nature.suppressor] : LOADS[nature.what];
    case 'protection':
      return nature.form === 'breaker' &&
        (nature.release === 'thermal' || own.some((each) => each.nature.kind === 'contact'))
        ? 'motor-breaker'
        : PROTECTION[nature.form];
    case 'resistor':
      return /dump|brak/.test(kind) ? 'braking-resistor' : 'resistor';
    case 'diode':
      return 'diode';
    default:
      return undefined;
  }
}

const LOADS = {
  coil: 'coil',
  valve: 'valve',
  brake: 'brake',
  lamp: 'lamp',
  fan: 'fan',
  other: 'heater',
} as const satisfies Record<string, SymbolName>;

const SUPPRESSED = {
  none: 'coil',
  diode: 'coil-diode',
  clamp: 'coil-clamp',
  'resistor-capacitor': 'coil-snubber',
  varistor: 'coil-varistor',
} as const satisfies Record<string, SymbolName>;

const PROTECTION = {
  fuse: 'fuse',
  breaker: 'breaker',
  residual: 'residual-current',
  switch: 'isolator',
} as const satisfies Record<string, SymbolName>;

function isPoint({ nature }: Terminal, own: readonly Terminal[]): boolean {
  if (nature.kind === 'joint') return true;
  const alone = own.every((each) => each.nature.kind === 'earth' || each.nature.kind === 'shield');
  return alone && (nature.kind === 'earth' || nature.kind === 'shield');
}

function pointSymbol({ kind }: Device, nature: Nature): SymbolName {
  if (nature.kind === 'earth') return nature.role === 'metal' ? 'frame' : 'earth';
  if (nature.kind === 'shield') return 'shield';
  return /plug|socket|connector/.test(kind) ? 'socket' : 'terminal';
}

/** What a piece of a large box shows, when all its terminals are of one sort. */
function signOf(nature: Nature): SymbolName | undefined {
  if (nature.kind === 'input' && nature.form !== 'logic') return 'opto';
  if (nature.kind === 'output' && nature.stage !== 'push-pull') return 'transistor';
  return undefined;
}

const MOTORS = {
  brushed: 'motor-direct',
  brushless: 'motor',
  stepper: 'motor-step',
  induction: 'motor-three',
} as const satisfies Record<string, SymbolName>;

function boxSymbol({ kind }: Device, own: readonly Terminal[]): SymbolName {
  const natures = own.map(({ nature }) => nature);
  const has = (test: (nature: Nature) => boolean): boolean => natures.some(test);
  const count = (...kinds: readonly Nature['kind'][]): number =>
    natures.filter((nature) => kinds.includes(nature.kind)).length;
  const phase = natures.find((nature) => nature.kind === 'motor-phase');
  const isFed = has((nature) => nature.kind === 'mains' && nature.side === 'takes');
  if (phase?.kind === 'motor-phase') {
    if (phase.side === 'takes') return MOTORS[phase.of];
    return isFed && phase.of === 'induction' ? 'inverter' : 'drive';
  }
  if (/safety/.test(kind)) return 'safety-relay';
  if (/filter/.test(kind)) return 'filter';
  if (kind === 'mains-motor') return count('mains') > 2 ? 'motor-three' : 'motor';
  if (/battery/.test(kind)) return 'battery';
  if (/resolver/.test(kind)) return 'resolver';
  if (/tacho/.test(kind)) return 'tacho';
  if (/probe/.test(kind)) return 'probe';
  if (/potentiometer/.test(kind)) return 'potentiometer';
  if (/solid/.test(kind)) return 'solid-relay';
  if (count('winding') > 0) return 'transformer';
  if (count('rectifier') > 0) return 'rectifier';
  if (count('supply') > 0 && isFed) return 'power-supply';
  if (count('supply') > 0 && count('feed') > 0 && count('input', 'output') === 0) return 'direct-converter';
  if (has((nature) => nature.kind === 'mains' && nature.side === 'gives')) return 'mains';
  if (count('differential-output', 'sensor') > 0 && count('input', 'differential-input') === 0)
    return 'encoder';
  if (count('output') > 0 && count('input', 'analogue-output') === 0 && natures.length <= 5)
    return /proximity|inductive/.test(kind) ? 'proximity' : 'sensor';
  if (count('input', 'output', 'differential-input', 'analogue-output') > 3) return 'control';
  return 'box';
}
