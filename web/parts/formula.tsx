/** A typeset formula. Typesetting is fetched when the first one is shown; until then, and where it fails, plain text stands. */
import { useEffect, useLayoutEffect, useRef, useState } from 'react';

type Render = (tex: string) => string;
let renderer: Promise<Render> | undefined;

/** MathML only: the browser sets it in its own fonts, and no style needs to be written into the page. */
const load = (): Promise<Render> => {
  renderer ??= import('katex').then(
    ({ default: katex }) =>
      (tex) =>
        katex.renderToString(tex, {
          output: 'mathml',
          throwOnError: false,
          displayMode: true,
          strict: false,
          trust: false,
        }),
  );
  return renderer;
};

export function Formula({ tex, plain }: { tex: string; plain: string }) {
  const [html, setHtml] = useState<string>();
  const box = useRef<HTMLDivElement>(null);
  const [wide, setWide] = useState(false);
  // What is scrolled by hand must be reachable by keyboard; what fits needs no stop.
  // biome-ignore lint/correctness/useExhaustiveDependencies: its width follows what is set in it
  useLayoutEffect(() => {
    const { scrollWidth = 0, clientWidth = 0 } = box.current ?? {};
    setWide(scrollWidth > clientWidth);
  }, [html, plain]);
  useEffect(() => {
    let current = true;
    load().then(
      (render) => current && setHtml(render(tex)),
      () => undefined,
    );
    return () => {
      current = false;
    };
  }, [tex]);
  // The TeX comes from our own sheets and numbers of our own printing, and the typesetter escapes text.
  return html === undefined ? (
    <div className="formula" ref={box}>
      {plain}
    </div>
  ) : (
    <div
      ref={box}
      className="formula"
      tabIndex={wide ? 0 : undefined}
      // biome-ignore lint/security/noDangerouslySetInnerHtml: MathML made by the typesetter from our own sheets
      dangerouslySetInnerHTML={{ __html: html }}
    />
  );
}
