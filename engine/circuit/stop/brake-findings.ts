/** Whether a load that drops is held all the time. */
import type { Looked, StopFinding } from './findings.ts';
import { DROPS } from './motion.ts';
import { canDrop, propCaution } from './prop.ts';
import { length, SMALL_DROP, seconds } from './say-stopping.ts';

const REMEDY =
  'Let the brake lose its current first, and take the drive’s power away only once it has closed. Nobody under it; block it before motor or brake is taken off.';

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
    else
      yield {
        ...common,
        verdict: 'fits',
        sentence: 'After every stop the brake closes first. It holds; it is not there to stop motion.',
      };
  }
}
