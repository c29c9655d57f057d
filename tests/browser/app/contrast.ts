/**
 * The contrast of two colours as #rrggbb. Source: WCAG 2.2, definitions of contrast ratio and relative luminance (seen).
 *
 * @example contrastOf('#000000', '#ffffff') //=> 21
 */
export function contrastOf(one: string, other: string): number {
  const [darker = 0, lighter = 0] = [luminanceOf(one), luminanceOf(other)].sort((a, b) => a - b);
  return (lighter + 0.05) / (darker + 0.05);
}

function luminanceOf(colour: string): number {
  if (!/^#[0-9a-f]{6}$/i.test(colour)) throw new Error(`not a colour of six digits: ${colour}`);
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => linear(Number.parseInt(colour.slice(at, at + 2), 16) / 255));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function linear(share: number): number {
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}
