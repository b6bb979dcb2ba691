/** A drive with empty capacitors joined to a bus that is live: by a contactor that closes, or by a plug pushed in. */
import { andList } from '../../../quantity/words.ts';
import { lengthNeed } from '../../wiring/inside-length.ts';
import type { Contact, Wire, WiringFinding } from '../../wiring/types.ts';
import { CONTACT_OHMS, wireOhms } from '../conductors.ts';
import type { PowerContext } from '../context.ts';
import type { Load } from '../loads.ts';
import { amps, byMargin, figure, finding, volts } from '../say.ts';
import { settingOf } from '../setting-of.ts';
import type { Source } from '../sources.ts';
import { driveFarads, EXEMPT_CHARGE, highestVolts, SAFE_VOLTS, STORED_SOURCE } from '../stored.ts';
import { NOTHING, type SupplyRule } from './rule.ts';

/** A main contact makes this many times its rated current: IEC 60947-4-1, AC-3 (recalled, check the standard). */
const MAKES = 10;
const SOURCE =
  'derived: volts of the bus over the resistance of wires at 20 °C and contacts, inductance ignored: on the safe side; a main contact makes 10 times its rated current: IEC 60947-4-1, AC-3 (recalled, check the standard)';
const PRECHARGE =
  'Put the contactor before the rectifier instead, or charge through a resistor that is bridged after a second.';

export const hotPlugRule: SupplyRule = {
  id: 'hot-plug',
  of: 'load',
  needs: 'nothing',
  judge: (context, subject) => {
    const load = context.flow.load.get(subject);
    const nature = load && context.wiring.terminals.get(load.from)?.nature;
    if (!load || nature?.kind !== 'feed' || nature.role !== 'power') return NOTHING;
    const guard = context.guards.terminals.get(load.from);
    const source = guard && context.flow.source.get(guard.source);
    return source && !source.ac ? { findings: judge(context, load, guard.pole, source) } : NOTHING;
  },
};

interface Between {
  readonly wires: readonly string[];
  /** One end of each contact. */
  readonly contacts: readonly string[];
  readonly plugs: readonly string[];
}

function between(context: PowerContext, load: Load, pole: string, source: Source): Between {
  const { wiring, passed } = context;
  const ways = [passed(load.from, pole), ...source.back.slice(0, 1).map((back) => passed(load.to, back))];
  const isContact = (id: string): boolean => wiring.terminals.get(id)?.nature.kind === 'contact';
  return {
    wires: ways.flatMap((way) => way?.wires ?? []),
    contacts: ways.flatMap((way) => way?.ends.filter(isContact) ?? []),
    plugs: ways.flatMap(
      (way) => way?.devices.filter((id) => wiring.devices.get(id)?.kind === 'connector') ?? [],
    ),
  };
}

/** Plugs on the way from a source to a drive. */
export function plugsBetween(context: PowerContext, drive: string, source: Source): readonly string[] {
  return context.flow.loadsOf(drive).flatMap((load) => {
    const guard = context.guards.terminals.get(load.from);
    return guard?.source === source.id ? between(context, load, guard.pole, source).plugs : [];
  });
}

function judge(context: PowerContext, load: Load, pole: string, source: Source): readonly WiringFinding[] {
  const { wires, contacts, plugs } = between(context, load, pole, source);
  if (contacts.length === 0 && plugs.length === 0) return [];
  const { wiring } = context;
  const high = highestVolts(context, source, [load.device]);
  const farads = driveFarads(context, load.device);
  if (high === undefined || (farads !== undefined && farads * high <= EXEMPT_CHARGE)) return [];
  const own = wiring.devices.get(load.device)?.settings['inrush-resistor'];
  const missing = wires.flatMap((id) => {
    const wire = wiring.wires.get(id);
    if (wire === undefined || wireOhms(wire) !== undefined) return [];
    return [
      ...(wire.length === undefined ? [lengthNeed(wire)] : []),
      ...(wire.section === undefined ? [`${id}.section`] : []),
    ];
  });
  const ohms =
    wires.reduce((sum, id) => sum + leastOhms(wiring.wires.get(id)!), 0) +
    contacts.length * CONTACT_OHMS +
    (typeof own === 'number' ? own : 0);
  const asks = farads === undefined ? [`${load.device}.input-capacitance`] : [];
  const peak = ohms > 0 ? high / ohms : undefined;
  return [
    ...(contacts.length > 0 ? [welding(context, load, contacts, peak, high, [...asks, ...missing])] : []),
    ...(plugs.length > 0 ? [plugging(load, plugs, peak, high, missing.length > 0)] : []),
    ...(contacts.length > 0 && high > SAFE_VOLTS ? [parted(context, load, contacts, high)] : []),
  ];
}

/** The weakest contact that closes onto empty capacitors. */
function welding(
  { wiring }: PowerContext,
  load: Load,
  contacts: readonly string[],
  peak: number | undefined,
  high: number,
  needs: readonly string[],
): WiringFinding {
  const each = contacts.map((id) => {
    const { device, nature } = wiring.terminals.get(id)!;
    const { role, dc, ac } = nature as Contact;
    const rated = dc?.amps ?? ac?.amps;
    // Without volts for them its amperes say nothing.
    const asks = dc || ac ? ['amps'] : ['volts', 'amps'];
    return {
      device,
      makes: rated === undefined ? undefined : rated * (role === 'main' ? MAKES : 1),
      needs: asks.map((each) => settingOf(wiring, device, `main-dc-${each}`, `dc-${each}`)),
    };
  });
  const about = [load.id, load.device, ...new Set(each.map(({ device }) => device))];
  const title = `${andList([...new Set(each.map(({ device }) => device))])} closing on the capacitors of ${load.name}`;
  const unrated = each.flatMap(({ makes, needs: asks }) => (makes === undefined ? asks : []));
  const weakest = each
    .filter((one): one is typeof one & { makes: number } => one.makes !== undefined)
    .sort((a, b) => a.makes - b.makes)[0];
  const opening = `When ${each[0]!.device} closes, the empty capacitors of ${load.name} are a short circuit on ${volts(high)}${peak === undefined ? '' : `: up to ${amps(peak)} for an instant`}`;
  const figures = [
    ...(peak === undefined ? [] : [figure('peak at most', peak, 'A')]),
    ...(weakest === undefined ? [] : [figure('current its contacts can make', weakest.makes, 'A')]),
  ];
  const margin = peak === undefined || weakest === undefined ? undefined : weakest.makes / peak;
  if (margin !== undefined && margin >= 1 && unrated.length === 0)
    return finding(
      'hot-plug',
      about,
      title,
      byMargin(margin),
      `${opening}; ${weakest!.device} makes ${amps(weakest!.makes)}.`,
      SOURCE,
      { margin, figures },
    );
  if (margin === undefined || needs.length > 0 || unrated.length > 0)
    return finding(
      'hot-plug',
      about,
      title,
      'unknown',
      `${opening}. Whether its contacts bear that has not been said in full: they may weld, and then they no longer open.`,
      SOURCE,
      { figures, needs: [...needs, ...unrated], remedy: PRECHARGE },
    );
  return finding(
    'hot-plug',
    about,
    title,
    'fails',
    `${opening}; ${weakest!.device} makes ${amps(weakest!.makes)}. Its contacts may weld, and then they no longer open.`,
    SOURCE,
    { margin, figures, remedy: PRECHARGE },
  );
}

/** A plug is never for joining a live bus; somebody will try. */
const plugging = (
  load: Load,
  plugs: readonly string[],
  peak: number | undefined,
  high: number,
  open: boolean,
): WiringFinding =>
  finding(
    'live-plug',
    [load.id, load.device, ...new Set(plugs)],
    `Plugging ${load.name} in live`,
    'tight',
    `${load.name} can be plugged in at ${andList([...new Set(plugs)])}. Done while ${volts(high)} are on, its empty capacitors burn the pins${peak === undefined || open ? '' : ` with up to ${amps(peak)}`} and may take the drive with them; pulled out live, the arc does not go out by itself.`,
    SOURCE,
    {
      figures: peak === undefined || open ? [] : [figure('peak at most', peak, 'A')],
      remedy: `Plug and unplug only with the bus off and measured below ${SAFE_VOLTS} V; say so on a label at the plug.`,
    },
  );

/** Behind an open contact a drive's own capacitors are no longer on the bleeder of the bus. */
const parted = (
  { wiring }: PowerContext,
  load: Load,
  contacts: readonly string[],
  high: number,
): WiringFinding => {
  const devices = [...new Set(contacts.map((id) => wiring.terminals.get(id)!.device))];
  return finding(
    'parted-charge',
    [load.id, load.device, ...devices],
    `Charge left in ${load.name} behind ${andList(devices)}`,
    'unknown',
    `Once ${andList(devices)} ${devices.length === 1 ? 'is' : 'are'} open, the capacitors of ${load.name} are cut off from the bleeder of the bus and keep up to ${volts(high)} for as long as nothing of their own drains them; its manual says how long.`,
    STORED_SOURCE,
    {
      remedy: `A warning plate: wait as long as the manual of ${load.name} says, then measure between its plus and minus; below ${SAFE_VOLTS} V within 5 s none is asked for.`,
    },
  );
};

/** A wire that is only known to be no longer than the others may be as short as nothing. */
const leastOhms = (wire: Wire): number => (wire.atMost ? 0 : (wireOhms(wire) ?? 0));
