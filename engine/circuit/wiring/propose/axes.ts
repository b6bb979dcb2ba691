/** Motor, encoder and brake of an axis or a spindle, and their cables. */
import { partFacts } from '../part-facts.ts';
import type { Build } from './build.ts';

const MOTOR_LEADS: Readonly<Record<string, readonly string[]>> = {
  brushed: ['M+', 'M-'],
  brushless: ['U', 'V', 'W'],
  induction: ['U', 'V', 'W'],
  stepper: ['A+', 'A-', 'B+', 'B-'],
};

export function proposeMotor(
  build: Build,
  chain: string,
  number: number,
  drive: string,
  part: string,
  kind: string,
): string {
  const facts = partFacts(build.refit.parts[part]!);
  const motor = build.device(`M${number}`, kind, `Motor of ${chain}`, { part, where: 'machine' });
  // The drive may send what it can, whatever the motor stands.
  const giver = build.refit.parts[build.devices.get(drive)!.part ?? ''];
  const type = facts.choice('type');
  build.settle(drive, { motor: type === 'dc' ? 'brushed' : type === 'servo' ? 'brushless' : type });
  const leads = MOTOR_LEADS[String(build.devices.get(drive)!.settings.motor ?? 'induction')] ?? [];
  const known = [
    facts.value('continuousCurrent') ?? facts.value('starCurrent'),
    giver === undefined ? undefined : partFacts(giver).value('continuousCurrent'),
  ].filter((each) => each !== undefined);
  const most = known.length === 0 ? undefined : Math.max(...known);
  const thick = most === undefined ? undefined : section(most);
  const cable = build.cable(
    `WM-${chain}`,
    `Motor of ${chain}`,
    {
      cores: String(leads.length + 1),
      section: thick,
      shield: 'braid',
      route: 'power',
      laid: 'moved',
    },
    most === undefined
      ? `section waits for: the current of ${motor} (Motor of ${chain}) or of its drive ${drive}`
      : thick === undefined
        ? `section waits for: somebody who can reckon it, for ${Number(most.toPrecision(3))} A are beyond what is usual`
        : `section of its cable for ${Number(most.toPrecision(3))} A, the most that ${drive} or ${motor} takes for good: ${thick}`,
  );
  for (const lead of leads) build.wire(`${drive}.${lead}`, `${motor}.${lead}`, cable);
  build.wire(`${drive}.M-SH`, `${motor}.SH`, cable);
  return motor;
}

/** By the current of a three-core cable in a duct at 40 °C, with something in hand: IEC 60204-1, table 6, column B2. */
const section = (amps: number): string | undefined =>
  (
    [
      [9, '1.5 mm²'],
      [14, '2.5 mm²'],
      [19, '4 mm²'],
      [25, '6 mm²'],
    ] as const
  ).find(([most]) => amps <= most)?.[1];

/** An encoder and its cable to whatever reads it; `prefix` is that of the reader's terminals. */
export function proposeEncoder(
  build: Build,
  chain: string,
  number: number,
  reader: string,
  prefix: string,
  part: string,
  /** Highest speed of its shaft, rad/s. */
  speed: number | undefined,
): string | undefined {
  const facts = partFacts(build.refit.parts[part]!);
  const output = facts.choice('output');
  if (output === undefined) return undefined;
  const lines = facts.value('lines');
  const encoder = build.device(`B${number}`, 'encoder', `Encoder of ${chain}`, {
    part,
    where: 'machine',
    settings: {
      rate:
        lines === undefined || speed === undefined
          ? undefined
          : `${Math.ceil((lines * speed) / (2 * Math.PI))} Hz`,
    },
  });
  const cable = build.cable(`WE-${chain}`, `Encoder of ${chain}`, {
    cores: output === 'differential' ? '8' : '5',
    section: '0.25 mm²',
    shield: 'braid',
    twisted: output === 'differential' ? 'yes' : 'no',
    route: 'signals',
    laid: 'moved',
  });
  for (const mark of build.terminals(encoder).keys())
    build.wire(`${encoder}.${mark}`, `${reader}.${prefix}${mark}`, cable);
  return encoder;
}
