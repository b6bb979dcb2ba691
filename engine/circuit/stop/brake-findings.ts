/** Whether a load that drops is held all the time. */
import type { Looked, StopFinding } from './findings.ts';
import { length, seconds } from './say-stopping.ts';

/** A millimetre is what a tool can be forgiven. */
const SMALL_DROP = 0.001;

export function* brakeFindings({ base, stops }: Looked): Generator<StopFinding> {
  for (const { id, vertical, brake } of base.model.motions) {
    if (!vertical) continue;
    const title = `Does the brake of ${id} hold before the drive lets go?`;
    const own = stops.flatMap(({ act, stops: list }) =>
      list.filter(({ motion }) => motion === id).map((stop) => ({ stop, says: act.says })),
    );
    const late = own.find(
      ({ stop }) => stop.drop !== 0 && (stop.drop ?? Number.POSITIVE_INFINITY) > SMALL_DROP,
    );
    const remedy =
      'Let the brake lose its current first, and take the drive’s power away only once it has closed. Nobody under it; block it before motor or brake is taken off.';
    if (brake < 0)
      yield {
        id: `${id}.brake`,
        title,
        verdict: 'fails',
        sentence: `${id} drops when nothing holds it, and has no brake.`,
        remedy,
      };
    else if (late)
      yield {
        id: `${id}.brake`,
        title,
        verdict: 'fails',
        sentence: `After “${late.says}” the brake closes ${seconds(late.stop.brakeOn)} after the act; the drive has let go before${late.stop.drop === undefined ? '. How far it drops is not known' : `, and it drops ${length(late.stop.drop)}`}.`,
        remedy,
      };
    else
      yield {
        id: `${id}.brake`,
        title,
        verdict: 'fits',
        sentence: 'After every stop the brake closes first. It holds; it is not there to stop motion.',
      };
  }
}
