/** The protective conductor of each device against its lines, and that of the machine against its leakage. */
import {
  LEAKAGE_AREA,
  LEAKAGE_LIMIT,
  LEAKAGE_SOURCE,
  PROTECTIVE_SOURCE,
  protectiveArea,
} from '../../../tables/conductor-protective.ts';
import type { Device, Wire, WiringFinding } from '../../wiring/types.ts';
import type { PowerContext } from '../context.ts';
import { addUp, leaksOf, namedLeaks, USUAL_SOURCE } from '../leakage.ts';
import { amps, area, byMargin, figure, finding } from '../say.ts';
import { byName } from '../sorted.ts';
import { NOTHING, type SupplyRule } from './rule.ts';

const wiresOn = ({ wiring, wiresAt }: PowerContext, terminal: string): readonly Wire[] =>
  wiresAt(terminal).flatMap((id) => wiring.wires.get(id) ?? []);

const POWER = new Set(['mains', 'winding', 'motor-phase', 'rectifier', 'supply']);

export const protectiveRule: SupplyRule<WiringFinding> = {
  id: 'protective',
  of: 'device',
  needs: 'nothing',
  judge: (context, subject) => {
    const device = context.wiring.devices.get(subject);
    const found = device && ofDevice(context, device);
    if (!found) return NOTHING;
    return found.verdict === 'unknown' ? { ...NOTHING, open: found } : { findings: [found] };
  },
  gather: { order: (a, b) => byName(a.id, b.id), judge: (_, open) => gathered(open) },
};

export const machineEarthRule: SupplyRule = {
  id: 'protective-leakage',
  of: 'whole',
  needs: 'nothing',
  judge: (context) => ({ findings: ofMachine(context) }),
};

/** One question for all devices whose wires have not been described. */
function gathered(open: readonly WiringFinding[]): readonly WiringFinding[] {
  if (open.length < 2) return open;
  return [
    finding(
      'protective',
      ['unsaid', ...open.flatMap(({ about }) => about)],
      'Protective conductors',
      'unknown',
      `Whether the protective conductors of ${open.length} devices are thick enough depends on areas that have not been said.`,
      PROTECTIVE_SOURCE.source,
      { needs: open.flatMap((each) => each.needs ?? []) },
    ),
  ];
}

function ofDevice(context: PowerContext, device: Device): WiringFinding | undefined {
  const { wiring } = context;
  const wiresOf = (is: (kind: string, power: boolean) => boolean): readonly Wire[] =>
    device.terminals.flatMap((id) => {
      const { nature } = wiring.terminals.get(id)!;
      const power = POWER.has(nature.kind) || (nature.kind === 'feed' && nature.role === 'power');
      return is(nature.kind, power) ? wiresOn(context, id) : [];
    });
  const earths = wiresOf((kind) => kind === 'earth');
  const lines = wiresOf((_, power) => power);
  // Whether metal is bonded at all is judged with the wiring; here is asked whether the copper is enough.
  if (earths.length === 0 || lines.length === 0 || device.kind === 'earth-bar') return undefined;
  const about = [device.id];
  const title = `Protective conductor of ${device.name || device.id}`;
  const unsaid = [...earths, ...lines].filter(({ section }) => section === undefined);
  if (unsaid.length > 0)
    return finding(
      'protective',
      about,
      title,
      'unknown',
      `Whether the protective conductor of ${device.name || device.id} is thick enough depends on areas that have not been said.`,
      PROTECTIVE_SOURCE.source,
      { needs: unsaid.map(({ id }) => `${id}.section`) },
    );
  const line = Math.max(...lines.map(({ section }) => section!)) * 1e6;
  const own = Math.max(...earths.map(({ section }) => section!)) * 1e6;
  const least = protectiveArea(line);
  const margin = own / least;
  return finding(
    'protective',
    about,
    title,
    byMargin(margin + 1e-9, 1),
    `${device.name || device.id} has lines of ${area(line * 1e-6)} and a protective conductor of ${area(own * 1e-6)}; the least is ${area(least * 1e-6)}.`,
    PROTECTIVE_SOURCE.source,
    {
      margin,
      figures: [
        figure('lines', line * 1e-6, 'mm²'),
        figure('protective conductor', own * 1e-6, 'mm²'),
        figure('least', least * 1e-6, 'mm²'),
      ],
      remedy: margin < 0.999 ? `Take ${least} mm².` : undefined,
    },
  );
}

/** Above 10 mA of leakage the protective conductor of the whole machine needs more than the ordinary. */
function ofMachine(context: PowerContext): readonly WiringFinding[] {
  const typed = context.settings.leakage;
  const sum = addUp(typed === undefined ? leaksOf(context) : []);
  if (typed === undefined && sum.leaks.length === 0) return [];
  const [sure, likely] = typed === undefined ? [sum.sure, sum.likely] : [typed, typed];
  const from = typed === undefined ? ` It comes from ${namedLeaks(sum.leaks)}.` : '';
  const source = `${LEAKAGE_SOURCE.source}${typed === undefined ? `; ${USUAL_SOURCE}` : ''}`;
  return context.terminalsOf('inlet').map((id) => {
    const { device } = context.wiring.terminals.get(id)!;
    const wires = wiresOn(context, id);
    const leaks = `${amps(likely)} leak to earth`;
    const answer = (
      verdict: WiringFinding['verdict'],
      sentence: string,
      more: { readonly remedy?: string; readonly needs?: readonly string[] } = {},
    ) =>
      finding(
        'protective-leakage',
        [device, id],
        'Protective conductor of the machine',
        verdict,
        sentence,
        source,
        {
          figures: [
            figure('leakage', likely, 'mA'),
            figure('from here on more is asked', LEAKAGE_LIMIT, 'mA'),
          ],
          ...more,
        },
      );
    const thick = wires.some(({ section }) => section !== undefined && section * 1e6 >= LEAKAGE_AREA * 0.995);
    const unsaid = wires.filter(({ section }) => section === undefined).map((wire) => `${wire.id}.section`);
    if (thick || (wires.length > 1 && likely > LEAKAGE_LIMIT))
      return answer(
        'fits',
        `${leaks}: ${likely > LEAKAGE_LIMIT ? 'that asks for' : 'more than 10 mA would ask for'} 10 mm² or a second protective conductor, and ${thick ? 'it has 10 mm²' : 'there is a second one'}.${from}`,
      );
    if (likely <= LEAKAGE_LIMIT && !sum.open)
      return answer(
        'fits',
        `${leaks}; up to ${amps(LEAKAGE_LIMIT)} an ordinary protective conductor is enough.${from}`,
      );
    const remedy =
      '10 mm² of copper, or a second protective conductor of the same area, or an industrial plug with at least 2.5 mm²: ask an electrician which.';
    if (sure <= LEAKAGE_LIMIT)
      return answer(
        'unknown',
        `About ${leaks}, by what is usual; above ${amps(LEAKAGE_LIMIT)} an ordinary protective conductor is not enough.${from}`,
        { needs: [...sum.needs, ...unsaid], remedy },
      );
    return answer(
      unsaid.length > 0 ? 'unknown' : 'fails',
      `${leaks}. If the one protective conductor breaks, they flow through whoever touches the machine.${from}`,
      { needs: unsaid, remedy },
    );
  });
}
