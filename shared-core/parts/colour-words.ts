const COLOURS = new Set('amber black blue brown clear colourless gold golden green grey gray magenta orange pink purple red rose silver turquoise violet white yellow'.split(' '));
const BESIDE = new Set('a an and antifreeze bright brake colour coloured color colored coolant dark fluid grease light liquid oil or pale the type'.split(' '));

/**
 * Whether a text says a colour and nothing that a part could be held to: makers dye as they please.
 *
 * @example saysOnlyColour('pink coolant') //=> true
 * @example saysOnlyColour('organic acid coolant, pink') //=> false
 */
export function saysOnlyColour(text: string): boolean {
  const words = text.toLowerCase().split(/[^\p{L}\p{N}]+/u).filter((word) => word !== '');
  return words.some((word) => COLOURS.has(word)) && words.every((word) => COLOURS.has(word) || BESIDE.has(word));
}
