/** The residual current device: which faults it must see, and what leaks past it all the time. */
import { andList, capital } from '../../../quantity/words.ts';
import { type Astray, RESIDUAL_SOURCE, SEES, typeFor } from '../../../tables/residual-types.ts';
import type { WiringFinding } from '../../wiring/types.ts';
import type { PowerContext } from '../context.ts';
import { countryOf } from '../countries/index.ts';
import { finding } from '../say.ts';
import type { Source } from '../sources.ts';
import { type Fitted, residualLeakage } from './leakage.ts';
import { mainsOf } from './mains.ts';
import type { SupplyRule } from './rule.ts';

/** What a fault to earth behind each device on the mains can look like. */
export function astrayOf({
  wiring,
  terminalsOf,
}: PowerContext): readonly { readonly device: string; readonly astray: Astray }[] {
  const made = new Map<string, { device: string; astray: Astray }>();
  for (const id of terminalsOf('takes')) {
    const device = wiring.devices.get(wiring.terminals.get(id)!.device);
    if (!device || made.has(device.id)) continue;
    const poles = device.terminals.flatMap((id) => {
      const each = wiring.terminals.get(id)!.nature;
      return each.kind === 'mains' && each.side === 'takes' ? [each.pole] : [];
    });
    const inverter = device.kind === 'inverter' || device.kind === 'drive';
    // Between two phases the bridge never comes back to earth potential: smooth as from three.
    const astray: Astray = !inverter
      ? 'pulses'
      : poles.includes('N') && !poles.includes('L2')
        ? 'mixed'
        : 'smooth';
    made.set(device.id, { device: device.id, astray });
  }
  return [...made.values()];
}

export const residualRule: SupplyRule = {
  id: 'residual',
  of: 'whole',
  needs: 'nothing',
  judge: (context) => ({ findings: residual(context) }),
};

function residual(context: PowerContext): readonly WiringFinding[] {
  const sources = mainsOf(context);
  if (sources.length === 0) return [];
  return [residualType(context, sources[0]!), ...residualLeakage(context, sources[0]!, fitted(context))];
}

function fitted({ wiring, settings, terminalsOf }: PowerContext): readonly Fitted[] {
  const own = new Map<string, Fitted>();
  for (const id of terminalsOf('residual')) {
    const { device, nature } = wiring.terminals.get(id)!;
    if (nature.kind === 'protection' && nature.form === 'residual')
      own.set(device, {
        device,
        name: device,
        ...(nature.type ? { type: nature.type } : {}),
        ...(nature.residual ? { amps: nature.residual } : {}),
      });
  }
  const before = settings.residualType;
  return [
    ...own.values(),
    ...(before === undefined
      ? []
      : [
          {
            device: null,
            name: 'the one before the socket',
            type: before,
            ...(before === 'none' || settings.residualAmps === undefined
              ? {}
              : { amps: settings.residualAmps }),
          },
        ]),
  ];
}

function residualType(context: PowerContext, mains: Source): WiringFinding {
  const title = 'Type of the residual current device';
  const about = [mains.device];
  const astray = astrayOf(context);
  const order = ['AC', 'A', 'F', 'B'] as const;
  const worst = astray
    .map((each) => ({ ...each, type: typeFor(each.astray) }))
    .sort((a, b) => order.indexOf(b.type) - order.indexOf(a.type))[0];
  const need = worst?.type ?? 'A';
  const because = worst
    ? `${worst.device} ${worst.astray === 'smooth' ? 'can let smooth direct current stray to earth, which blinds types AC, A and F' : worst.astray === 'mixed' ? 'is an inverter on one phase, whose stray currents have many frequencies' : 'rectifies, so that stray currents come in pulses, which blind type AC'}`
    : 'a machine with rectifiers needs at least this';
  const devices = fitted(context);
  const source = RESIDUAL_SOURCE.source;
  const wrong = devices.filter(
    ({ type }) => type !== undefined && type !== 'none' && !SEES[type].includes(worst?.astray ?? 'pulses'),
  );
  if (wrong.length > 0)
    return finding(
      'residual-type',
      about,
      title,
      'fails',
      `${capital(because)}: type ${need} is needed, and ${andList(wrong.map(({ name, type }) => `${name} is type ${type}`))}. It may fail to trip, for other machines behind it too.`,
      source,
      {
        remedy: `Type ${need}, chosen and fitted by a licensed electrician; the inverter’s manual has the last word.`,
      },
    );
  if (devices.length === 0 || devices.some(({ type }) => type === undefined))
    return finding(
      'residual-type',
      about,
      title,
      'unknown',
      `${capital(because)}: a residual current device before it must be type ${need} at least. Which one is fitted has not been said.`,
      source,
      { needs: ['settings.residual-type'] },
    );
  if (devices.every(({ type }) => type === 'none')) {
    const country = countryOf(context.settings.country);
    return finding(
      'residual-type',
      about,
      title,
      'unknown',
      `There is no residual current device before the machine. ${country ? country.socket.says : 'Whether there must be one is a rule of your country, which Fettle does not know.'}`,
      country?.socket.source ?? 'local rules',
      { remedy: `Ask ${country?.ask ?? 'a licensed electrician'}; it would have to be type ${need}.` },
    );
  }
  return finding(
    'residual-type',
    about,
    title,
    'fits',
    `${capital(because)}: type ${need} is enough, and that is there.`,
    source,
  );
}
