import { useLayoutEffect, useState } from 'preact/hooks';

/** Pixels of 1 rem at the usual setting of a browser, as the style sheet has it. */
const USUAL_REM_PX = 18;
/** Beyond this, letters would leave no room for what they name. */
const GREATEST = 2.5;

/** So many times as large as usual is the user's text; drawings have to be told, as they are drawn in pixels. */
export function useTextScale(): number {
  const [text, setText] = useState(textScale);
  useLayoutEffect(() => {
    const measure = () => setText(textScale());
    measure();
    window.addEventListener('resize', measure);
    return () => window.removeEventListener('resize', measure);
  }, []);
  return text;
}

function textScale(): number {
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  // Smaller than usual is never drawn: figures on a drawing are small enough. Before the style sheet is read it is unknown.
  return rem > USUAL_REM_PX ? Math.min(rem / USUAL_REM_PX, GREATEST) : 1;
}
