/** A typeset formula. Typesetting is fetched when the first one is shown; until then, and where it fails, plain text stands. */
import { useEffect, useState } from 'react';

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
    <div className="formula">{plain}</div>
  ) : (
    // biome-ignore lint/security/noDangerouslySetInnerHtml: MathML made by the typesetter from our own sheets
    <div className="formula" dangerouslySetInnerHTML={{ __html: html }} />
  );
}
