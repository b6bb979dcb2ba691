/** The pictures of an axis or a spindle, fetched when they come near. */
import { lazy, memo, Suspense, useEffect, useState } from 'react';
import type { Picture } from '../../engine/assess/pictures/index.ts';
import type { Session, View } from '../state/session.ts';

const PictureCard = lazy(() =>
  import('../pictures/picture-card.tsx').then(({ PictureCard: card }) => ({ default: memo(card) })),
);

/** Milliseconds without a new snapshot before the pictures are drawn. */
const REST = 150;

interface Props {
  readonly session: Session;
  readonly view: View;
  readonly chain: string;
  readonly onSelect: (finding: string) => void;
}

export function Pictures({ session, view, chain, onSelect }: Props) {
  const [pictures, setPictures] = useState<readonly Picture[]>([]);
  const { shown } = view;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new snapshot makes new pictures
  useEffect(() => {
    let current = true;
    // Verdicts come first while somebody types; the pictures follow when the hand rests.
    const rest = setTimeout(() => {
      session.engine.ask('pictures', { chain }).then(
        (got) => current && setPictures(got as readonly Picture[]),
        () => undefined,
      );
    }, REST);
    return () => {
      current = false;
      clearTimeout(rest);
    };
  }, [session, chain, shown]);
  return (
    <section aria-labelledby="pictures" style={{ marginTop: '2rem' }}>
      <h2 id="pictures">Pictures</h2>
      <Suspense fallback={<p role="status">Drawing …</p>}>
        <div className="columns two">
          {pictures.map((picture) => (
            <PictureCard key={picture.id} picture={picture} onSelectFinding={onSelect} />
          ))}
        </div>
      </Suspense>
    </section>
  );
}
