/** What the rest of the refit knows of the motions that a stop circuit stops. */
import { scopesOf } from '../assess/assess.ts';
import { type Assessment, sayPath } from '../assess/index.ts';
import { resolve, type Scope } from '../assess/resolve.ts';
import { DRAG, forces, LEAD, MOTOR_FRICTION, RATIO, reflected, torque } from '../checks/motion.ts';
import { fact, policy, type Ref } from '../checks/refs.ts';
import { inertia } from '../checks/spindle-chain.ts';
import { stopping } from '../checks/spindle-time.ts';
import {
  DROPS,
  type MotionWanted,
  motionsOf,
  type Offer,
  type Offers,
  type Ranked,
  rankPatterns,
  torqueOffOf,
  traitsOf,
} from '../circuit/stop/index.ts';
import { TORQUE_OFF_CHANNELS } from '../parts/torque-off.ts';
import { own } from '../quantity/own.ts';
import { BASES, type Basis } from '../quantity/types.ts';
import { chosenPart } from '../refit/place.ts';
import type { Chain, Refit, StopCircuit } from '../refit/types.ts';
import { factsAround } from './part-facts.ts';

/** Facts named before the rest are only counted. */
const NAMED = 3;

/**
 * For every motion of the circuit that goes by the name of an axis: its speed, lead, inertia, friction, slowing, brake, weight
 * and travel as far as they are known, all at the motor's shaft; for a spindle its top speed, inertia, drag and time to stop, at
 * the spindle. Each with where it comes from.
 */
export function stopOffers(assessment: Assessment, circuit: StopCircuit): Offers {
  const scopes = scopesOf(assessment);
  const offers: Record<string, Readonly<Record<string, Offer>>> = {};
  for (const chain of assessment.refit.chains)
    if (chain.kind === 'axis' && Object.hasOwn(circuit.motions, chain.id))
      offers[chain.id] = axisOffers(assessment, chain, scopes(chain));
  const spindles = assessment.refit.chains.filter(({ kind }) => kind === 'spindle');
  for (const motion of Object.values(circuit.motions)) {
    if (motion.kind !== 'spindle') continue;
    // Most machines have one spindle, whatever the stop circuit calls it.
    const chain =
      spindles.find(({ id }) => id === motion.id) ?? (spindles.length === 1 ? spindles[0] : undefined);
    if (chain) offers[motion.id] = spindleOffers(assessment, chain, scopes(chain));
  }
  return offers;
}

/** What a machine has that moves, each axis with whether it drops, so that a way to stop laid out for it gets its brakes. */
export function whatMoves(assessment: Assessment): readonly MotionWanted[] {
  const wanted = motionsOf(assessment.refit);
  const offers = stopOffers(assessment, blank(wanted));
  return wanted.map((motion) => {
    const vertical = own(own(offers, motion.id) ?? {}, 'vertical');
    const drops = vertical !== undefined && 'value' in vertical && vertical.value !== DROPS.no;
    return drops ? { ...motion, drops } : motion;
  });
}

/** The ways to stop of the stop circuit, the one that suits this machine best first, each with why. */
export function rankedPatterns(assessment: Assessment): readonly Ranked[] {
  const { refit } = assessment;
  const wanted = motionsOf(refit);
  const traits = traitsOf(wanted, stopOffers(assessment, blank(wanted)));
  return rankPatterns(traits, traits.torqueOff ?? torqueOffOf(refit));
}

/** A circuit that holds nothing but what moves. */
const blank = (wanted: readonly MotionWanted[]): StopCircuit => ({
  pattern: null,
  note: '',
  settings: {},
  elements: {},
  wires: {},
  motions: Object.fromEntries(
    wanted.map(({ id, kind, name, settings = {} }) => [
      id,
      { id, kind, name, drive: '', brake: null, settings },
    ]),
  ),
});

/** Channels of safe torque off: from the drive itself, else as somebody stated them for its device in the wiring. */
function torqueOffOffer(refit: Refit, chain: Chain, place: 'drive' | 'spindle-drive'): Offer {
  const path = sayPath(`${chain.id}.${place}.torqueOff`);
  const option = factsAround(refit, chain.id).choice(place, 'torqueOff');
  const channels = option === undefined ? undefined : own(TORQUE_OFF_CHANNELS, option);
  if (channels !== undefined) return { value: channels, from: path };
  const part = chosenPart(refit, chain.id, place);
  for (const { id, part: of, settings, usual } of Object.values(refit.wiring.devices)) {
    const stated = own(settings, 'sto')?.trim() ?? '';
    if (part === null || of !== part.id || usual?.includes('sto') || !/^[012]$/.test(stated)) continue;
    return { value: Number(stated), from: `the wiring, ${id}` };
  }
  return { lacks: [path] };
}

function spindleOffers({ refit }: Assessment, chain: Chain, scope: Scope): Readonly<Record<string, Offer>> {
  const one = (ref: Ref, says: string): Offer => offer(scope, [ref], says, (value) => value!);
  return {
    speed: one(fact('spindle-duty', 'topSpeed'), 'the top speed that is asked of it'),
    deceleration: one(stopping.get('t_b'), 'from top speed, braked by its drive'),
    inertia: one(inertia.get('J'), 'all that turns, as the spindle feels it'),
    friction: one(fact('spindle', 'drag'), 'bearings, seals and belts'),
    'torque-off': torqueOffOffer(refit, chain, 'spindle-drive'),
  };
}

/** One number from several, or what it waits for. */
function offer(scope: Scope, refs: readonly Ref[], says: string, of: (...values: number[]) => number): Offer {
  const values = refs.map((ref) => resolve(scope, ref));
  const lacks = new Set<string>();
  const rests = new Set<string>();
  const numbers: number[] = [];
  let weakest: Basis | undefined;
  for (const value of values) {
    if (value.state === 'missing') for (const path of value.facts) lacks.add(sayPath(path));
    else if (value.state === 'known') {
      numbers.push(value.value);
      for (const path of value.facts) rests.add(sayPath(path));
      if (value.basis && (!weakest || BASES.indexOf(value.basis) > BASES.indexOf(weakest)))
        weakest = value.basis;
    }
  }
  if (numbers.length < refs.length) return { lacks: [...lacks] };
  const value = of(...numbers);
  return Number.isFinite(value) ? { value, from: sayFrom(says, [...rests], weakest) } : { lacks: [] };
}

function axisOffers(assessment: Assessment, chain: Chain, scope: Scope): Readonly<Record<string, Offer>> {
  const facts = factsAround(assessment.refit, chain.id);
  const from = (refs: readonly Ref[], says: string, of: (...values: number[]) => number): Offer =>
    offer(scope, refs, says, of);
  const one = (ref: Ref, says: string): Offer => from([ref], says, (value) => value);
  const weight = from([forces.get('F_hold')], '', (force) => force);
  const brake = facts.fitted('brake') === true;
  const load = loadOf(assessment, chain.id, from, weight);
  const drops = !('value' in load && load.value === DROPS.no);
  return {
    speed: one(fact('duty', 'rapid'), 'the rapid that is asked of it'),
    lead: from([LEAD, RATIO], 'lead of the screw by the reduction', (lead, ratio) => lead! / ratio!),
    deceleration: one(
      fact('duty', 'acceleration'),
      'the acceleration that is asked of it; whether motor and drive can do that is a check of its own',
    ),
    inertia: one(reflected.get('J_tot'), 'all that moves, as the motor feels it'),
    friction: from(
      [forces.get('F_f'), LEAD, RATIO, DRAG, MOTOR_FRICTION],
      'ways and seals, nut and bearings, motor; what the screw itself loses is left out',
      (force, lead, ratio, drag, motor) => ((force! * lead!) / (2 * Math.PI) + drag!) / ratio! + motor!,
    ),
    ...(brake
      ? {
          'brake-torque': from([fact('brake', 'torque'), RATIO], 'the brake, at the motor', (held, ratio) =>
            facts.choice('brake', 'on') === 'screw' ? held! / ratio! : held!,
          ),
        }
      : {}),
    vertical: load,
    'torque-off': torqueOffOffer(assessment.refit, chain, 'drive'),
    ...(drops
      ? {
          weight: from(
            [forces.get('F_hold'), LEAD, RATIO],
            'the weight along the axis, as if the screw lost nothing',
            (force, lead, ratio) => (force! * lead!) / (2 * Math.PI * ratio!),
          ),
        }
      : {}),
    'brake-margin': one(policy('brake'), 'the policy by which the check of the axis judges its brake'),
    travel: one(fact('slide', 'travel'), 'the travel of the slide'),
  };
}

/**
 * Whether the axis drops when nothing holds it, as the check of staying put judges it: friction is counted on only as far as
 * that check counts it.
 */
function loadOf(
  { findings }: Assessment,
  axis: string,
  from: (refs: readonly Ref[], says: string, of: (...values: number[]) => number) => Offer,
  weight: Offer,
): Offer {
  if ('lacks' in weight) return weight;
  if (!(weight.value > 0)) return { value: DROPS.no, from: 'no weight pulls along the axis' };
  const back = from([torque.get('T_back'), DRAG], '', (each) => each!);
  // Where a brake is fitted that check is not asked: then it is the screw alone that may hold it.
  const stays = findings.find(({ id }) => id === `${axis}.stays`)?.verdict;
  if (stays === 'unknown' && 'lacks' in back) return back;
  if (stays === 'fits' || ('value' in back && back.value <= 0))
    return { value: DROPS.no, from: 'its screw and the drag of it hold the weight' };
  return stays === 'tight'
    ? { value: DROPS.friction, from: 'drag of the screw holds its weight, with too little to spare' }
    : { value: DROPS.yes, from: 'its weight pulls along the axis; friction is not counted on to hold it' };
}

/** 'all that moves, as the motor feels it: X slide mass, X motor inertia and 4 more; weakest: a guess' */
function sayFrom(says: string, facts: readonly string[], basis: Basis | undefined): string {
  const named = facts.slice(0, NAMED).join(', ');
  const more = facts.length > NAMED ? ` and ${facts.length - NAMED} more` : '';
  if (facts.length === 0) return says;
  return `${says}: ${named}${more}${basis ? `; weakest basis: ${basis}` : ''}`;
}
