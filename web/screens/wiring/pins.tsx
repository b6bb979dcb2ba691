/** Photos of what is there, with terminals pinned to where they are seen. */
import { type MouseEvent, useEffect, useState } from 'react';
import type { Refit, WiringDevice, WiringPin } from '../../../engine/refit/types.ts';
import { api } from '../../api.ts';
import type { Session } from '../../state/session.ts';
import { Photos } from '../survey/photos.tsx';
import { recordLatest } from '../survey/record.ts';
import { putDevice } from './changes.ts';

interface Props {
  readonly session: Session;
  readonly refit: Refit;
  readonly device: WiringDevice;
  readonly marks: readonly string[];
}

export function Pins({ session, refit, device, marks }: Props) {
  const [names, setNames] = useState<readonly string[]>([]);
  const [photo, setPhoto] = useState('');
  const [mark, setMark] = useState(marks[0] ?? '');
  const pinnedOn = [...new Set(Object.values(device.pins).map((pin) => pin.photo))];
  const [first] = pinnedOn;
  useEffect(() => {
    let gone = false;
    void api
      .photos(refit.id)
      .then(({ photos }) => !gone && setNames(photos))
      .catch(() => !gone && setNames([]));
    return () => {
      gone = true;
    };
  }, [refit.id]);
  const shown = photo || first || '';
  const putPins = (change: (pins: WiringDevice['pins']) => WiringDevice['pins']): Promise<boolean> =>
    recordLatest(session, (now) => {
      const latest = now.wiring.devices[device.id];
      return latest && putDevice(now, { ...latest, pins: change(latest.pins) });
    });
  const put = (pin: WiringPin): Promise<boolean> => putPins((pins) => ({ ...pins, [mark]: pin }));
  const takeOff = (which: string): Promise<boolean> =>
    putPins((pins) => Object.fromEntries(Object.entries(pins).filter(([each]) => each !== which)));
  const onPhoto = (event: MouseEvent<HTMLElement>): void => {
    const { left, top, width, height } = event.currentTarget.querySelector('img')!.getBoundingClientRect();
    const share = (part: number, whole: number) =>
      Math.round(Math.min(1, Math.max(0, part / whole)) * 1000) / 1000;
    void put({ photo: shown, x: share(event.clientX - left, width), y: share(event.clientY - top, height) });
  };
  const pin = Object.hasOwn(device.pins, mark) ? device.pins[mark] : undefined;
  return (
    <details className="wiring-pins">
      <summary>Photos of its terminals: {Object.keys(device.pins).length} pinned</summary>
      <p className="small">
        Choose a terminal, then click where it is seen on the photo. The dot and the mark stand beside it from
        then on, here and on the printed page. Before a cover comes off: main switch off and locked, wait
        until capacitors have discharged, measure.
      </p>
      <div className="row">
        <label className="wiring-choice">
          Terminal to pin
          <select value={mark} onChange={(event) => setMark(event.target.value)}>
            {marks.map((each) => (
              <option key={each} value={each}>
                {each}
                {Object.hasOwn(device.pins, each) ? ' (pinned)' : ''}
              </option>
            ))}
          </select>
        </label>
        <label className="wiring-choice">
          Photo
          <select value={shown} onChange={(event) => setPhoto(event.target.value)}>
            <option value="">choose one</option>
            {[...new Set([...pinnedOn, ...names, ...(photo ? [photo] : [])])].map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </label>
      </div>
      <Photos
        refit={refit.id}
        of={`terminals of ${device.id}`}
        names={[]}
        onChange={async (added) => {
          const name = added.at(-1);
          if (name === undefined) return false;
          setNames((before) => [...before, name]);
          setPhoto(name);
          return true;
        }}
      />
      {shown && (
        <>
          <button
            type="button"
            className="wiring-photo"
            onClick={onPhoto}
            aria-label={`Pin ${mark} where you click on ${shown}`}
          >
            <img src={api.photoUrl(refit.id, shown)} alt={`Terminals of ${device.id}`} />
            {Object.entries(device.pins)
              .filter(([, each]) => each.photo === shown)
              .map(([each, { x, y }]) => (
                <span
                  key={each}
                  className="wiring-pin"
                  style={{ left: `${x * 100}%`, top: `${y * 100}%` }}
                  aria-hidden="true"
                >
                  {each}
                </span>
              ))}
          </button>
          <div className="row">
            <Share
              words={`${mark} from the left, %`}
              value={pin?.photo === shown ? pin.x : 0.5}
              set={(x) => put({ photo: shown, x, y: pin?.photo === shown ? pin.y : 0.5 })}
            />
            <Share
              words={`${mark} from the top, %`}
              value={pin?.photo === shown ? pin.y : 0.5}
              set={(y) => put({ photo: shown, x: pin?.photo === shown ? pin.x : 0.5, y })}
            />
            {pin && (
              <button type="button" onClick={() => void takeOff(mark)}>
                Take the pin of {mark} off
              </button>
            )}
          </div>
        </>
      )}
    </details>
  );
}

/** The same by keyboard: recorded when the slider is let go. */
function Share({
  words,
  value,
  set,
}: {
  words: string;
  value: number;
  set: (share: number) => Promise<boolean>;
}) {
  const [now, setNow] = useState(Math.round(value * 100));
  useEffect(() => setNow(Math.round(value * 100)), [value]);
  const done = (): void => {
    if (now !== Math.round(value * 100)) void set(now / 100);
  };
  return (
    <label>
      {words}
      <input
        type="range"
        min={0}
        max={100}
        value={now}
        onChange={(event) => setNow(Number(event.target.value))}
        onPointerUp={done}
        onKeyUp={done}
        onBlur={done}
      />
    </label>
  );
}
