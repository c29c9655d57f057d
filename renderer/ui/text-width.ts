import { useEffect, useMemo, useState } from 'react';

/**
 * Tells the width of words in pixels as they will be drawn in a font; measures anew once the font has come.
 *
 * @example const measure = useTextWidth("600 13px 'Source Sans 3'");
 */
export function useTextWidth(font: string): (text: string) => number {
  const [loaded, setLoaded] = useState(false);
  useEffect(() => {
    let here = true;
    void document.fonts.load(font).then(() => here && setLoaded(true));
    return () => {
      here = false;
    };
  }, [font]);
  return useMemo(() => measureIn(font, loaded), [font, loaded]);
}

/** Widths already measured are kept; those measured before the font came are not. */
function measureIn(font: string, _loaded: boolean): (text: string) => number {
  const pen = document.createElement('canvas').getContext('2d');
  const known = new Map<string, number>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    if (pen !== null) pen.font = font;
    const width = pen?.measureText(text).width ?? text.length * 7;
    known.set(text, width);
    return width;
  };
}
