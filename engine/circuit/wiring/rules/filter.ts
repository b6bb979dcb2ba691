import { figure, found, PRACTICE, type Rule, verdictOf } from '../check/rule.ts';
import { amps, list, terminalName, volts } from '../check/say.ts';
import type { View } from '../check/view.ts';
import { LOAD_SIDE } from '../kinds/mains-filter.ts';
import type { Mains, Terminal, WiringFinding } from '../types.ts';

const EMC = 'common practice of electromagnetic compatibility, no source';
/** IEC 60204-1, 8.2.6 (recalled, check the standard): above this the protective conductor must not break unnoticed. */
const HIGH_LEAKAGE = 0.01;
/** m². */
const THICK = 10e-6;

/** A mains filter: behind its fuse, right before the drive, and nothing leads round it. */
export const filter: Rule = {
  id: 'filter',
  title: 'Does the mains filter stand where it works?',
  of: 'device',
  judge: (view, id) => {
    const device = view.device(id)!;
    const own = device.terminals.map((each) => view.terminal(each)!);
    const lines = own.filter((each) => isLine(each));
    const wired = (each: string | null) => each !== null && view.wiresAt(each).length > 0;
    if (lines.length === 0 || !lines.some((each) => wired(each.id) || wired(each.with))) return [];
    // What is not wired yet is told elsewhere.
    const whole = lines.filter((each) => wired(each.id) && wired(each.with));
    if (whole.length === 0) return [];
    return [
      ...place(view, id, whole),
      ...rating(view, whole),
      ...apart(view, id, whole),
      ...conductor(view, id, own, device.settings.leakage),
    ];
  },
};

const isLine = ({ nature, mark, with: other }: Terminal): boolean =>
  nature.kind === 'mains' && nature.side === 'passes' && other !== null && !mark.endsWith(LOAD_SIDE);

interface Reached {
  readonly takers: readonly Terminal[];
  readonly sources: readonly Terminal[];
  readonly fuses: readonly Terminal[];
}

/** Most nets on the way from a filter to what it feeds. */
const FAR = 40;

/** What one side of a pole leads to, through fuses, contactors and other filters, never back through its own device. */
function beyond(view: View, start: string, device: string): Reached {
  const takers: Terminal[] = [];
  const sources: Terminal[] = [];
  const fuses: Terminal[] = [];
  const first = view.net(start);
  const seen = new Set(first ? [first] : []);
  for (const net of seen) {
    if (seen.size > FAR) break;
    for (const kind of ['mains', 'winding', 'protection', 'contact'] as const)
      for (const each of view.inNet(net, kind)) {
        const terminal = view.terminal(each)!;
        const { nature } = terminal;
        if (terminal.device === device) continue;
        if (nature.kind === 'mains' && nature.side === 'gives') sources.push(terminal);
        else if ((nature.kind === 'mains' && nature.side === 'takes') || nature.kind === 'winding')
          takers.push(terminal);
        else if (nature.kind === 'contact' && nature.role !== 'main') continue;
        else {
          if (nature.kind === 'protection' && (nature.form === 'fuse' || nature.form === 'breaker'))
            fuses.push(terminal);
          const far = terminal.with === null ? undefined : view.net(terminal.with);
          if (far) seen.add(far);
        }
      }
  }
  return { takers, sources, fuses };
}

function place(view: View, id: string, lines: readonly Terminal[]): readonly WiringFinding[] {
  const bridged = lines.find((each) => view.net(each.id) === view.net(each.with!));
  if (bridged)
    return [
      found(
        filter,
        [id, bridged.id, bridged.with!],
        'fails',
        `A wire leads round ${id}: ${bridged.id} and ${bridged.with} are joined outside it, so that it filters nothing.`,
        {
          source: EMC,
          remedy: 'Take the wire off that joins them; what it feeds hangs on the load side alone.',
        },
      ),
    ];
  const live = lines.find(({ nature }) => (nature as Mains).pole !== 'N') ?? lines[0]!;
  const [line, load] = [beyond(view, live.id, id), beyond(view, live.with!, id)];
  const about = [id, live.id, live.with!];
  if (line.sources.length === 0 && load.sources.length > 0)
    return [
      found(
        filter,
        about,
        'tight',
        `${id} lies the wrong way round: its load side is towards the mains. It lets more through that way, and leaks more.`,
        { source: EMC, remedy: 'Exchange both sides: line to the mains, load to the drive.' },
      ),
    ];
  if (line.sources.length === 0) return [];
  const drives = load.takers.filter(({ device }) =>
    view.device(device)!.terminals.some((each) => view.terminal(each)!.nature.kind === 'motor-phase'),
  );
  if (drives.length === 0)
    return [
      found(
        filter,
        about,
        'tight',
        load.takers.length === 0
          ? `Nothing hangs on the load side of ${id}.`
          : `Behind ${id} hangs ${list(load.takers.map((each) => each.device))}, and no drive: what a drive radiates passes beside it.`,
        { source: EMC, remedy: 'Put it right before the drive or inverter it is for.' },
      ),
    ];
  if (line.fuses.length === 0)
    return [
      found(
        filter,
        [...about, ...line.sources.map((each) => each.id)],
        'tight',
        `No fuse or breaker stands between the mains and ${id}: what is before the socket is all that guards it.`,
        { source: PRACTICE, remedy: 'Put it behind the breaker of its drive.' },
      ),
    ];
  return [
    found(
      filter,
      about,
      'fits',
      `${id} stands behind ${list([...new Set(line.fuses.map((each) => each.device))])} and before ${list([...new Set(drives.map((each) => each.device))])}.`,
      { source: EMC },
    ),
  ];
}

/** Amperes and volts, at the pole that carries most. */
function rating(view: View, lines: readonly Terminal[]): readonly WiringFinding[] {
  const made: WiringFinding[] = [];
  const live = lines.filter(({ nature }) => (nature as Mains).pole !== 'N');
  const [first] = live;
  if (!first) return [];
  const { amps: can, volts: most } = first.nature as Mains;
  const behind = live.map((each) => beyond(view, each.with!, each.device).takers);
  const sums = behind.map((takers) => takers.reduce((sum, each) => sum + (ampsOf(each) ?? 0), 0));
  const unknown = [...new Set(behind.flat().filter((each) => ampsOf(each) === undefined))];
  const asked = Math.max(...sums);
  if (behind.some((takers) => takers.length > 0)) {
    const needs = [
      ...(can === undefined ? [`${first.device}.current`] : []),
      ...unknown.map((each) => `${each.id}.current`),
    ];
    const figures = [
      figure('passes', asked, 'A'),
      ...(can === undefined ? [] : [figure('rated for', can, 'A')]),
    ];
    made.push(
      can !== undefined && asked > can
        ? found(
            filter,
            [first.device],
            'fails',
            `${amps(asked)} pass through ${first.device}, which is made for ${amps(can)}: its coils overheat, and it no longer filters.`,
            {
              part: 'current',
              margin: can / asked,
              figures,
              source: 'rating of the filter',
              remedy: 'Take a larger one.',
            },
          )
        : needs.length > 0
          ? found(
              filter,
              [first.device],
              'unknown',
              `Whether ${first.device} carries what hangs behind it cannot be said: ${list(needs)} not known.`,
              { part: 'current', figures, needs },
            )
          : found(
              filter,
              [first.device],
              verdictOf(can! / asked, 1),
              `${amps(asked)} pass through ${first.device}, which is made for ${amps(can!)}.`,
              { part: 'current', margin: can! / asked, figures, source: 'rating of the filter' },
            ),
    );
  }
  const source = beyond(view, first.id, first.device).sources[0];
  const there = (source?.nature as Mains | undefined)?.volts;
  if (source === undefined || there === undefined || most === undefined) return made;
  // Of three phases the volts between two of them lie across its capacitors.
  const across = live.length > 1 ? there * Math.sqrt(3) : there;
  if (across > most * 1.1)
    made.push(
      found(
        filter,
        [first.device, source.id],
        'fails',
        `${terminalName(view, source.id)} puts ${volts(across)} on ${first.device}, which is made for ${volts(most)}: its capacitors break down.`,
        {
          part: 'volts',
          margin: (most * 1.1) / across,
          figures: [figure('there is', across, 'V'), figure('made for', most, 'V')],
          source: 'rating of the filter; mains up to a tenth above nominal',
          remedy: 'Take one for this voltage.',
        },
      ),
    );
  return made;
}

const ampsOf = ({ nature }: Terminal): number | undefined =>
  nature.kind === 'mains' || nature.kind === 'winding' ? nature.amps : undefined;

/** Its wires in and out must not lie beside each other. */
function apart(view: View, id: string, lines: readonly Terminal[]): readonly WiringFinding[] {
  const cables = (side: 'line' | 'load') =>
    new Set(
      lines.flatMap((each) =>
        view.wiresAt(side === 'line' ? each.id : each.with!).flatMap((wire) => view.wire(wire)!.cable ?? []),
      ),
    );
  const [line, load] = [cables('line'), cables('load')];
  const shared = [...line].filter((each) => load.has(each));
  const remedy = 'Lay them apart: in at one end of the filter, out at the other, and never in one bundle.';
  if (shared.length > 0)
    return [
      found(
        filter,
        [id, ...shared],
        'fails',
        `The wires into ${id} and out of it lie in one jacket (${list(shared)}): what it keeps off jumps across from wire to wire.`,
        { part: 'apart', source: EMC, remedy },
      ),
    ];
  const routes = (cables: ReadonlySet<string>) =>
    new Set([...cables].map((each) => view.cable(each)?.route ?? '').filter((each) => each !== ''));
  const loads = routes(load);
  const together = [...routes(line)].filter((each) => loads.has(each));
  return together.length === 0
    ? []
    : [
        found(
          filter,
          [id, ...line, ...load],
          'tight',
          `The cables into ${id} and out of it lie on the same way (${list(together)}): what it keeps off jumps across.`,
          { part: 'apart', source: EMC, remedy },
        ),
      ];
}

/** A filter that leaks much makes the metal live once its protective conductor is lost. */
function conductor(
  view: View,
  id: string,
  own: readonly Terminal[],
  leakage: number | string | undefined,
): readonly WiringFinding[] {
  if (typeof leakage !== 'number' || leakage <= HIGH_LEAKAGE) return [];
  const earth = own.find(({ nature }) => nature.kind === 'earth');
  const wires = earth ? view.wiresAt(earth.id) : [];
  // None at all is told by the rule of earth.
  if (!earth || wires.length === 0) return [];
  const safe = wires.length > 1 || wires.some((wire) => (view.wire(wire)!.section ?? 0) >= THICK * 0.999);
  return [
    found(
      filter,
      [id, earth.id],
      safe ? 'fits' : 'tight',
      `${id} leaks ${amps(leakage)} to earth${safe ? ', and its protective conductor is doubled or thick enough not to break.' : ': if its one protective conductor breaks, whoever touches the metal carries that.'}`,
      {
        part: 'earth',
        figures: [figure('leaks', leakage, 'mA')],
        source:
          'IEC 60204-1, 8.2.6: above 10 mA a conductor of 10 mm² or a second one (recalled, check the standard)',
        remedy: safe ? undefined : 'Give it a second conductor to the earth bar, or one of 10 mm².',
      },
    ),
  ];
}
