import { createTheme, defaultVariantColorsResolver, type CSSVariablesResolver, type MantineColorsTuple, type VariantColorsResolver } from '@mantine/core';

/** The blue-green of what comes later; also of everything one may press. */
const tide: MantineColorsTuple = ['#e9f4f4', '#d2e6e8', '#a5ced2', '#83bec4', '#54a2aa', '#38919a', '#2a828b', '#1f6f78', '#185b63', '#10474d'];
/** Paper, rules and borders. */
const gray: MantineColorsTuple = ['#faf7f1', '#f3eee3', '#e9e2d3', '#ddd4c1', '#c9bfa9', '#8a8069', '#766c59', '#5f574a', '#433d34', '#2a2620'];
/** Lamp-lit paper: a warm dark, never black. */
const dark: MantineColorsTuple = ['#ece5d8', '#d3cabb', '#b8af9f', '#8f8677', '#5c5549', '#474137', '#2d2a25', '#1d1b18', '#171512', '#100f0c'];

const SANS = "'Source Sans 3', 'Segoe UI', system-ui, sans-serif";
const SERIF = "'Source Serif 4', Georgia, 'Times New Roman', serif";

/** Words on a filled button are dark on lamp-lit paper, where its ground is light. */
const variantColorResolver: VariantColorsResolver = (input) => {
  const colors = defaultVariantColorsResolver(input);
  return input.variant === 'filled' ? { ...colors, color: 'var(--on-later)' } : colors;
};

/** The look that the library's parts take on; what is ours alone stands in tokens.css. */
export const theme = createTheme({
  colors: { tide, gray, dark },
  primaryColor: 'tide',
  primaryShade: { light: 7, dark: 3 },
  variantColorResolver,
  autoContrast: true,
  white: '#fffdf8',
  black: '#22303a',
  fontFamily: SANS,
  fontFamilyMonospace: SANS,
  fontSizes: { xs: '0.8125rem', sm: '0.9375rem', md: '1rem', lg: '1.125rem', xl: '1.25rem' },
  headings: {
    fontFamily: SERIF,
    fontWeight: '600',
    sizes: {
      h1: { fontSize: '1.625rem', lineHeight: '1.2' },
      h2: { fontSize: '1.25rem', lineHeight: '1.3' },
      h3: { fontSize: '1.0625rem', lineHeight: '1.3' },
    },
  },
  defaultRadius: 'sm',
  cursorType: 'pointer',
  respectReducedMotion: true,
});

const OURS = {
  '--mantine-color-body': 'var(--paper)',
  '--mantine-color-text': 'var(--ink)',
  '--mantine-color-dimmed': 'var(--ink-soft)',
  '--mantine-color-placeholder': 'var(--ink-soft)',
  '--mantine-color-error': 'var(--late)',
  '--mantine-color-anchor': 'var(--later)',
  '--mantine-color-default': 'var(--sheet)',
  '--mantine-color-default-hover': 'var(--sheet-pressed)',
  '--mantine-color-default-color': 'var(--ink)',
  '--mantine-color-default-border': 'var(--field-edge)',
  '--mantine-primary-color-filled': 'var(--later)',
  '--mantine-primary-color-filled-hover': 'var(--later-pressed)',
  '--mantine-color-tide-filled': 'var(--later)',
  '--mantine-color-tide-filled-hover': 'var(--later-pressed)',
  '--mantine-color-tide-light-color': 'var(--later-pressed)',
  '--mantine-color-tide-light-hover': 'var(--sheet-pressed)',
};

/** The edges of fields and what is behind them, which the library takes from its scales: other steps in light and in dark. */
const FIELDS = {
  light: { '--mantine-color-gray-4': 'var(--field-edge)', '--mantine-color-white': 'var(--field)' },
  dark: { '--mantine-color-dark-4': 'var(--field-edge)', '--mantine-color-dark-6': 'var(--field)' },
};

/** Hands our tokens, which know light from dark themselves, to the library's own variables for both. */
export const cssVariables: CSSVariablesResolver = () => ({ variables: {}, light: { ...OURS, ...FIELDS.light }, dark: { ...OURS, ...FIELDS.dark } });
