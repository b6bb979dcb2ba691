/** Whether a load that drops is held all the time, and by a brake that is strong enough. */
import { formatNumber, formatQuantity } from '../../quantity/index.ts';
import type { Looked, StopFinding } from './findings.ts';
import type { MotionUnit } from './model.ts';
import { DROPS } from './motion.ts';
import { canDrop, propCaution } from './prop.ts';
import { length, SMALL_DROP, seconds } from './say-stopping.ts';

const REMEDY =
  'Let the brake lose its current first, and take the drive’s power away only once it has closed. Nobody under it; block it before motor or brake is taken off.';

const FIRST = 'After every stop the brake closes first.';

/** Whether a brake that closes in time is strong enough, with the reserve that the check of the axis asks for. */
function strengthOf({ numbers: { read, rows } }: MotionUnit): Omit<StopFinding, 'id' | 'title'> {
  const [torque, weight, margin] = ['brake-torque', 'weight', 'brake-margin'].map((name) => read[name]);
  if (torque === undefined || weight === undefined || margin === undefined) {
    const waits = rows.filter(
      ({ setting }) => ['brake-torque', 'weight'].includes(setting) && read[setting] === undefined,
    );
    return {
      verdict: 'unknown',
      sentence: `${FIRST} Whether it is strong enough is not known: ${waits.map(({ name, from }) => `${name}: ${from}`).join('; ')}.`,
    };
  }
  const says = (value: number): string => formatQuantity(value, 'N·m', { digits: 3 });
  const asked = `${says(margin * weight)} (${formatNumber(margin, 3)} times the load)`;
  // The last bits of a product are no shortfall.
  if (torque >= margin * weight * (1 - 1e-9))
    return {
      verdict: 'fits',
      sentence: `${FIRST} It needs ${asked} with its reserve and has ${says(torque)}. It holds; it is not there to stop motion.`,
    };
  return {
    verdict: 'fails',
    sentence: `${FIRST} ${torque < weight ? 'It is too weak for its load' : 'It has too little in hand'}: it needs ${asked} with its reserve and has only ${says(torque)}.`,
    remedy: 'A stronger brake, or less weight for it to hold. Nobody under it until then.',
  };
}

export function* brakeFindings(looked: Looked): Generator<StopFinding> {
  const { base, stops } = looked;
  for (const unit of base.model.motions) {
    if (!canDrop(unit)) continue;
    const { id, brake, numbers } = unit;
    const title = `Does the brake of ${id} hold before the drive lets go?`;
    const own = stops.flatMap(({ act, stops: list }) =>
      list.filter(({ motion }) => motion === id).map((stop) => ({ stop, says: act.says })),
    );
    const caution = propCaution(
      base.model,
      own.map(({ stop }) => stop),
      [unit],
    );
    const common = { id: `stop.${id}.brake`, title, ...(caution === undefined ? {} : { caution }) };
    const late = own.find(
      ({ stop }) => stop.drop !== 0 && (stop.drop ?? Number.POSITIVE_INFINITY) > SMALL_DROP,
    );
    if (numbers.read.vertical === undefined && brake < 0)
      yield {
        ...common,
        verdict: 'unknown',
        sentence: `Whether ${id} drops when nothing holds it is not known: ${numbers.rows.find(({ setting }) => setting === 'vertical')!.from}.`,
      };
    else if (brake < 0)
      yield {
        ...common,
        verdict: numbers.read.vertical === DROPS.friction ? 'tight' : 'fails',
        sentence:
          numbers.read.vertical === DROPS.friction
            ? `${id} has no brake, and friction just holds its load: oil, wear and shaking can free it.`
            : `${id} drops when nothing holds it, and has no brake.`,
        remedy: REMEDY,
      };
    else if (late)
      yield {
        ...common,
        verdict: 'fails',
        sentence: `After “${late.says}” the brake closes ${seconds(late.stop.brakeOn)} after the act; the drive has let go before${late.stop.drop === undefined ? '. How far it drops is not known' : `, and it drops ${length(late.stop.drop)}`}.`,
        remedy: REMEDY,
      };
    else if (own.length === 0)
      yield {
        ...common,
        verdict: 'unknown',
        sentence: `No stop of ${id} could be looked at, so nothing is known of when its brake closes.`,
      };
    else yield { ...common, ...strengthOf(unit) };
  }
}
