import { Button, type CSSVariablesResolver, createTheme, defaultVariantColorsResolver, Input } from '@mantine/core';

/**
 * The component library wears our colours: each of its tokens points at a property of theme.css, so that day, night,
 * desk and bench are switched by two attributes on <html> and nothing is drawn twice.
 */
const tints = (
  name: string,
): readonly [string, string, string, string, string, string, string, string, string, string] => {
  const full = `var(--${name})`;
  const soft = `var(--${name}-soft)`;
  return [soft, soft, soft, full, full, full, full, full, full, full];
};

const targets: Record<string, string> = { xs: 'var(--target-small)', compact: 'var(--target-small)' };
const targetOf = (size: unknown): string => targets[String(size ?? 'md')] ?? 'var(--target)';

export const theme = createTheme({
  fontFamily: 'var(--font)',
  headings: { fontFamily: 'var(--font)', fontWeight: '620' },
  primaryColor: 'link',
  colors: { link: tints('link'), blocks: tints('blocks') },
  defaultRadius: '3px',
  fontSizes: {
    xs: 'calc(var(--font-size) * 0.9)',
    sm: 'var(--font-size)',
    md: 'var(--font-size)',
    lg: 'calc(var(--font-size) * 1.125)',
    xl: 'calc(var(--font-size) * 1.35)',
  },
  respectReducedMotion: true,
  cursorType: 'pointer',
  /** Paper buttons with an ink edge; only the one act that the page is for is filled. */
  variantColorResolver: (input) => {
    const name = input.color === 'blocks' ? 'blocks' : 'link';
    const full = `var(--${name})`;
    const soft = `var(--${name}-soft)`;
    if (input.variant === 'filled') {
      const hover = `color-mix(in oklab, ${full} 86%, var(--ink))`;
      return { background: full, hover, color: `var(--on-${name})`, border: '1px solid transparent' };
    }
    if (input.variant === 'default') {
      const color = name === 'blocks' ? full : 'var(--ink)';
      return { background: 'var(--paper-raised)', hover: soft, color, border: '1px solid var(--line-strong)' };
    }
    if (input.variant === 'subtle' || input.variant === 'transparent') {
      return { background: 'transparent', hover: soft, color: full, border: '1px solid transparent' };
    }
    if (input.variant === 'light')
      return { background: soft, hover: soft, color: full, border: '1px solid transparent' };
    return defaultVariantColorsResolver(input);
  },
  components: {
    Button: Button.extend({
      defaultProps: { variant: 'default' },
      vars: (_theme, props) => ({
        root: {
          '--button-height': targetOf(props.size),
          '--button-padding-x': '0.85em',
          '--button-fz': 'var(--font-size)',
        },
      }),
    }),
    ActionIcon: { defaultProps: { variant: 'subtle' }, vars: () => ({ root: { '--ai-size': 'var(--target)' } }) },
    CloseButton: { vars: () => ({ root: { '--cb-size': 'var(--target)' } }) },
    Input: Input.extend({
      vars: () => ({
        wrapper: {
          '--input-height': 'var(--target)',
          '--input-fz': 'var(--font-size)',
          '--input-bd': 'var(--line-strong)',
        },
      }),
    }),
    InputWrapper: { defaultProps: { inputWrapperOrder: ['label', 'description', 'input', 'error'] } },
    Modal: { defaultProps: { transitionProps: { duration: 0 } } },
    ModalRoot: { defaultProps: { transitionProps: { duration: 0 } } },
    DrawerRoot: { defaultProps: { transitionProps: { duration: 0 } } },
    Notification: { defaultProps: { closeButtonProps: { 'aria-label': 'Put away' } } },
    Popover: { defaultProps: { transitionProps: { duration: 0 } } },
    Menu: { defaultProps: { transitionProps: { duration: 0 } } },
    Tooltip: { defaultProps: { openDelay: 400 } },
  },
});

const libraryTokens = {
  '--mantine-color-body': 'var(--paper-raised)',
  '--mantine-color-text': 'var(--ink)',
  '--mantine-color-bright': 'var(--ink)',
  '--mantine-color-dimmed': 'var(--ink-soft)',
  '--mantine-color-placeholder': 'var(--ink-soft)',
  '--mantine-color-anchor': 'var(--link)',
  '--mantine-color-error': 'var(--blocks)',
  '--mantine-color-default': 'var(--paper-raised)',
  '--mantine-color-default-hover': 'var(--link-soft)',
  '--mantine-color-default-color': 'var(--ink)',
  '--mantine-color-default-border': 'var(--line-strong)',
  '--mantine-color-disabled': 'var(--paper-sunk)',
  '--mantine-color-disabled-color': 'var(--ink-soft)',
  '--mantine-color-disabled-border': 'var(--line)',
  '--mantine-primary-color-filled': 'var(--link)',
  '--mantine-primary-color-filled-hover': 'var(--link)',
  '--mantine-primary-color-contrast': 'var(--on-link)',
  '--mantine-primary-color-light': 'var(--link-soft)',
  '--mantine-primary-color-light-color': 'var(--link)',
  '--mantine-color-link-filled': 'var(--link)',
  '--mantine-color-link-light': 'var(--link-soft)',
  '--mantine-color-link-light-color': 'var(--link)',
  '--mantine-color-white': 'var(--paper-raised)',
  '--mantine-color-gray-0': 'var(--paper-sunk)',
  '--mantine-color-gray-1': 'var(--paper-sunk)',
  '--mantine-color-gray-2': 'var(--line)',
  '--mantine-color-gray-3': 'var(--line)',
  '--mantine-color-gray-4': 'var(--line-strong)',
  '--mantine-color-dark-4': 'var(--line)',
  '--mantine-color-dark-5': 'var(--line)',
  '--mantine-color-dark-6': 'var(--paper-raised)',
};

/** Points the library's own tokens at ours; the same in both schemes because ours already answer to the scheme. */
export const tokensOfTheLibrary: CSSVariablesResolver = () => ({
  variables: {},
  light: libraryTokens,
  dark: libraryTokens,
});

/** Things that are charted on more than one screen, each with its own colour and dash wherever it appears. */
const seriesOrder: Readonly<Record<string, number>> = {
  paid: 1,
  actual: 1,
  'engine-in': 1,
  blocked: 2,
  'over budget': 2,
  received: 3,
  'cost recognised': 3,
  earned: 3,
  spent: 2,
  worked: 2,
  committed: 4,
  ordered: 4,
  'estimate at completion': 5,
  forecast: 5,
  budget: 6,
  planned: 6,
  needed: 6,
  fitted: 7,
  'jobs by count': 1,
  'jobs by weight': 5,
  labour: 7,
  refunded: 8,
  safe: 8,
  likely: 5,
  'likely and safe': 5,
  'with the plan': 1,
  floor: 2,
};
const dashes = ['', '8 3', '2 3', '10 3 2 3', '5 3', '3 3', '14 4', '4 3 1 3 1 3'] as const;

function seriesNumber(name: string): number {
  const key = name.trim().toLowerCase();
  const known = seriesOrder[key];
  if (known !== undefined) return known;
  let sum = 0;
  for (const letter of key) sum = (sum * 31 + (letter.codePointAt(0) ?? 0)) % 9973;
  return (sum % 8) + 1;
}

/** The colour of a charted thing, as a CSS value; the same name has the same colour on every screen. */
export const seriesColour = (name: string): string => `var(--chart-${seriesNumber(name)})`;

/** The dash of a charted line, so that two lines are told apart without colour. Empty is a solid line. */
export const seriesDash = (name: string): string => dashes[seriesNumber(name) - 1] ?? '';
