/** From the mains to everything that is fed with them, and protective earth as one star. */
import { formatQuantity } from '../../../quantity/index.ts';
import { chosenPart } from '../../../refit/place.ts';
import { RATINGS } from '../../../tables/breakers.ts';
import { LOAD_SIDE } from '../kinds/mains-filter.ts';
import { partFacts } from '../part-facts.ts';
import type { Build } from './build.ts';

/** What takes mains: a device with its terminals in the order L, N or L, L2, L3; and contactors it goes through. */
export interface Taker {
  readonly device: string;
  readonly marks: readonly string[];
  readonly contactors: readonly string[];
  readonly name: string;
  /** A contactor beside the last one, which exchanges two phases. */
  readonly reversing?: string;
  readonly cable?: string;
  /** Found or made right before the device. */
  readonly filter?: string;
}

/** Marks by which a drive takes the mains, in the order of the phases; none where it takes direct voltage. */
export function mainsMarks(build: Build, drive: string): readonly string[] {
  const marks = build.has(`${drive}.L3`) ? ['L1', 'L2', 'L3'] : ['L', 'N'];
  return marks.every((mark) => build.terminal(`${drive}.${mark}`)?.nature.kind === 'mains') ? marks : [];
}

/** `later`: takers that come and go, whose breakers are known by their names. */
export function proposeMains(build: Build, takers: readonly Taker[], later: readonly Taker[] = []): void {
  const site = chosenPart(build.refit, null, 'site');
  const facts = site ? partFacts(site) : undefined;
  const three = build.threePhase;
  const inlet = build.device('X0', 'mains-inlet', 'Mains inlet', {
    part: site?.id ?? null,
    where: 'cabinet',
    settings: {
      phases: three ? 'three' : 'one',
      current: facts?.value('breaker') === undefined ? undefined : `${facts.value('breaker')} A`,
    },
  });
  const poles = three ? ['L1', 'L2', 'L3', 'N'] : ['L1', 'N'];
  const main = build.device('Q1', 'main-switch', 'Main switch', {
    settings: { poles: String(poles.length) },
  });
  for (const [n, pole] of poles.entries()) build.wire(`${inlet}.${pole}`, `${main}.${2 * n + 1}`);
  const out = (pole: string) => `${main}.${2 * poles.indexOf(pole) + 2}`;
  for (const [n, taker] of [...takers, ...later].entries()) {
    const { device, marks, contactors, name, reversing, filter, cable = null } = taker;
    const volts = facts?.value('mains');
    // What is bought or set now is bought or set for these mains.
    if (marks[0] === 'L' && volts !== undefined && marks.length === 2)
      build.settle(device, { 'mains-volts': `${volts} V` });
    const live = marks.length === 3 ? ['L1', 'L2', 'L3'] : ['L1'];
    if (!live.every((pole) => poles.includes(pole))) continue;
    const settings = { poles: String(live.length) };
    const there = new Set(build.devices.keys());
    const breaker = later.includes(taker)
      ? breakerOf(build, taker, live.length)
      : build.device(`F${10 + n}`, 'breaker', `Breaker of ${name}`, { settings });
    if (build.devices.get(breaker)!.kind === 'motor-breaker') build.settle(breaker, setTo(build, taker));
    else if (!there.has(breaker)) build.settle(breaker, bought(build, taker));
    const path = marks.length === 3 ? live : ['L1', 'N'];
    const at = path.map((pole, pin) => {
      if (pole === 'N') return out('N');
      build.wire(out(pole), `${breaker}.${2 * pin + 1}`);
      return `${breaker}.${2 * pin + 2}`;
    });
    for (const contactor of contactors) {
      const first = mainPolesUsed(build, contactor);
      build.atLeast(contactor, 'main', first + at.length);
      for (const [pin, from] of at.entries()) {
        build.wire(from, `${contactor}.${2 * (first + pin) + 1}`);
        at[pin] = `${contactor}.${2 * (first + pin) + 2}`;
      }
    }
    if (reversing !== undefined && at.length === 3) reverse(build, contactors.at(-1)!, reversing);
    for (const [pin, from] of at.entries()) {
      const pole = filter === undefined ? undefined : `${filter}.${path[pin]}`;
      if (pole === undefined || !build.has(pole)) build.wire(from, `${device}.${marks[pin]!}`, cable);
      else {
        build.wire(from, pole);
        build.wire(`${pole}${LOAD_SIDE}`, `${device}.${marks[pin]!}`);
      }
    }
  }
}

/** Its own breaker: one with a dial for a motor on three phases, which guards its winding too; what is there stays. */
function breakerOf(build: Build, { device, name }: Taker, poles: number): string {
  const [own, plain] = [`Motor breaker of ${name}`, `Breaker of ${name}`];
  const isMotor = build.devices.get(device)!.kind === 'mains-motor';
  const isThere = (kind: string, called: string) =>
    [...build.devices.values()].some((each) => each.kind === kind && each.name === called.slice(0, 100));
  return isMotor && poles === 3 && !isThere('breaker', plain)
    ? build.named('Q', 'motor-breaker', own, { settings: { poles: '3' } })
    : build.named('F', 'breaker', plain, { settings: { poles: String(poles) } });
}

/** What a new breaker is to be: set to what a motor takes, or patient where a motor starts behind it, and of the next rating over what that takes. */
function bought(build: Build, { device, marks }: Taker): Readonly<Record<string, string | undefined>> {
  if (build.devices.get(device)!.kind !== 'mains-motor') return { curve: 'C' };
  const rated = ratedAmps(build, device, marks);
  // A quarter in hand: habit.
  const size = rated === undefined ? undefined : RATINGS.find((each) => each >= rated * 1.25);
  return { curve: 'D', amps: size === undefined ? undefined : `${size} A` };
}

/** A dial is set to the plate of its motor, as soon as that is known; what somebody set stays. */
function setTo(build: Build, { device, marks }: Taker): Readonly<Record<string, string | undefined>> {
  const rated = ratedAmps(build, device, marks);
  return { amps: rated === undefined ? undefined : formatQuantity(rated, 'A', { digits: 3 }) };
}

function ratedAmps(build: Build, device: string, marks: readonly string[]): number | undefined {
  const nature = build.terminal(`${device}.${marks[0]!}`)?.nature;
  return nature?.kind === 'mains' ? nature.amps : undefined;
}

/** The other contactor beside the first, with its first and third phase exchanged behind it. */
function reverse(build: Build, one: string, other: string): void {
  for (const pin of [0, 1, 2]) {
    build.wire(`${one}.${2 * pin + 1}`, `${other}.${2 * pin + 1}`);
    build.wire(`${other}.${2 * pin + 2}`, `${one}.${2 * (2 - pin) + 2}`);
  }
}

/** Main contacts the stop circuit itself uses: the others are free for the mains of a spindle. */
function mainPolesUsed(build: Build, contactor: string): number {
  let most = 0;
  for (const { from, to, id } of build.wants)
    for (const end of [from, to]) {
      const pole =
        end.startsWith(`${contactor}.`) && id !== undefined
          ? /^([1-9])$/.exec(end.slice(contactor.length + 1))
          : null;
      if (pole) most = Math.max(most, Math.ceil(Number(pole[1]) / 2));
    }
  return most;
}

/** One bar, and to every metal part and every device its own conductor; the 0 V that are to be earthed, once each. */
export function proposeEarth(build: Build, zeros: readonly string[]): void {
  build.device('H1', 'metal', 'Machine bed', { where: 'machine' });
  build.device('H2', 'metal', 'Cabinet');
  build.device('H3', 'metal', 'Door of the cabinet', { settings: { hinged: 'yes' } });
  const ends: string[] = [];
  for (const id of build.devices.keys())
    for (const terminal of build.terminals(id).values())
      if (
        terminal.nature.kind === 'earth' &&
        terminal.nature.role !== 'bar' &&
        terminal.nature.role !== 'passes'
      )
        ends.push(terminal.id);
  ends.push(...zeros);
  const bar = build.device('X1', 'earth-bar', 'Earth bar', { settings: { ways: String(ends.length + 4) } });
  const used = new Set<string>();
  for (const wire of build.wires.values()) for (const end of [wire.from, wire.to]) used.add(end);
  const free = [...build.terminals(bar).keys()].map((mark) => `${bar}.${mark}`).filter((id) => !used.has(id));
  for (const end of ends) {
    const alreadyOn = [...build.wires.values()].some(
      ({ from, to }) =>
        (from === end && to.startsWith(`${bar}.`)) || (to === end && from.startsWith(`${bar}.`)),
    );
    if (alreadyOn) continue;
    const screw = free.shift();
    if (screw === undefined) return;
    const motor = build.devices.get(end.slice(0, end.indexOf('.')));
    const cable = [...build.cables.keys()].find((id) => motor?.name === build.cables.get(id)!.name);
    build.wire(screw, end, cable ?? null);
  }
}
