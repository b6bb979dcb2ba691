/** A list or all diagrams on paper, as they will be printed. */
import { useEffect, useMemo } from 'react';
import { Link } from 'wouter';
import {
  DIAGRAM_STYLE,
  legend,
  marksOf,
  pictureOfSheet,
  sheetTitle,
} from '../../../engine/circuit/drawing/index.ts';
import { type ListId, listPaper, PAPER_STYLE } from '../../../engine/circuit/lists/index.ts';
import type { Refit, WiringDevice } from '../../../engine/refit/types.ts';
import { api } from '../../api.ts';
import { drawNode } from './draw-node.tsx';
import { LIST_NAMES, PuttingTogether, useList } from './lists.tsx';
import { PRINT_STYLE } from './print-style.ts';
import type { WiringView } from './use-wiring.ts';

interface Props {
  readonly refit: Refit;
  readonly wiring: WiringView;
  readonly what: string;
  readonly home: string;
}

const today = (): string => new Date().toISOString().slice(0, 10);

export function WiringPrint({ refit, wiring, what, home }: Props) {
  const diagrams = what === 'diagrams';
  useEffect(() => {
    // The page's policy allows no style but files of our own and what our own script makes.
    const style = new CSSStyleSheet();
    style.replaceSync(`${PAPER_STYLE}${DIAGRAM_STYLE}${PRINT_STYLE(diagrams)}`);
    document.adoptedStyleSheets.push(style);
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== style);
    };
  }, [diagrams]);
  return (
    <div className="stack">
      <div className="not-printed row">
        <Link href={`${home}/${diagrams ? 'diagrams' : 'lists'}`} className="button">
          Back
        </Link>
        <button type="button" className="main" onClick={() => print()}>
          Print, or save as PDF
        </button>
        <p className="soft">{diagrams ? 'A3, lying. On A4 it is smaller and still legible.' : 'A4.'}</p>
      </div>
      {diagrams ? (
        <Sheets wiring={wiring} name={refit.name} />
      ) : Object.hasOwn(LIST_NAMES, what) ? (
        <Paper refit={refit} wiring={wiring} id={what as ListId} />
      ) : (
        <p>There is no such list.</p>
      )}
    </div>
  );
}

function Paper({ refit, wiring, id }: { refit: Refit; wiring: WiringView; id: ListId }) {
  const { list, problem, work } = useList(wiring, id);
  const paper = useMemo(
    () => (list ? drawNode(listPaper(refit.name, list, today())) : null),
    [list, refit.name],
  );
  if (problem) return <p className="bad">{problem}</p>;
  if (!list) return <PuttingTogether work={work} />;
  return (
    <div className="wiring-on-paper">
      {paper}
      {id === 'pins' && <PinnedPhotos refit={refit} />}
    </div>
  );
}

/** Every photo on which terminals of a device are pinned, with the marks on it. */
function PinnedPhotos({ refit }: { refit: Refit }) {
  return (
    <div className="wiring-paper">
      {Object.values(refit.wiring.devices).flatMap((device) =>
        [...new Set(Object.values(device.pins).map(({ photo }) => photo))].map((photo) => (
          <figure key={`${device.id} ${photo}`} className="pinned-photo">
            <figcaption>
              {device.id}
              {device.name && `, ${device.name}`}: {photo}
            </figcaption>
            <PinnedPhoto refit={refit.id} device={device} photo={photo} />
          </figure>
        )),
      )}
    </div>
  );
}

function PinnedPhoto({ refit, device, photo }: { refit: string; device: WiringDevice; photo: string }) {
  return (
    <div className="wiring-photo">
      <img src={api.photoUrl(refit, photo)} alt={`Terminals of ${device.id}`} />
      {Object.entries(device.pins)
        .filter(([, pin]) => pin.photo === photo)
        .map(([mark, { x, y }]) => (
          <span key={mark} className="wiring-pin" style={{ left: `${x * 100}%`, top: `${y * 100}%` }}>
            {mark}
          </span>
        ))}
    </div>
  );
}

function Sheets({ wiring, name }: { wiring: WiringView; name: string }) {
  const { looked, stamp, drawing } = wiring;
  const { drawn, draw, progress } = drawing;
  useEffect(() => {
    if (stamp > 0) draw();
  }, [stamp, draw]);
  const pages = useMemo(() => {
    const marks = marksOf(looked?.findings ?? []);
    return (drawn?.sheets ?? []).map((sheet) => ({
      key: sheetTitle(sheet),
      picture: drawNode(pictureOfSheet(sheet, { marks })),
    }));
  }, [drawn, looked]);
  if (!drawn)
    return (
      <p role="status">
        Drawing … {progress && progress.all > 0 ? `${progress.done} of ${progress.all} groups` : ''}
      </p>
    );
  return (
    <div className="wiring-on-paper wiring-sheets">
      {pages.map(({ key, picture }) => (
        <section key={key} className="wiring-sheet">
          {picture}
          <p className="foot">
            {name}, as of {today()}. After a change of the wiring, print it again. Before you touch a wire:
            main switch off and locked, wait until capacitors have discharged, measure.
          </p>
        </section>
      ))}
      <section className="wiring-sheet">{drawNode(legend(drawn.symbols, 3))}</section>
    </div>
  );
}
