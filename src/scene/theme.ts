/** Colours of the page, read from its CSS custom properties while it runs. */
import { Color } from 'three';

export interface Palette {
  paper: Color;
  ink: Color;
  quietInk: Color;
  accent: Color;
  free: Color;
  blocked: Color;
  zone: Color;
  left: Color;
  right: Color;
  /** True when ink is lighter than paper: a slate board instead of drawing paper. */
  dark: boolean;
}

/** Property, and what stands in for it where the page names none. */
const PROPERTIES = {
  paper: ['--paper', '#f3ede1'],
  ink: ['--ink', '#2b2723'],
  quietInk: ['--ink-2', '#6b6259'],
  accent: ['--accent', '#c8452a'],
  free: ['--free', '#2b6a5b'],
  blocked: ['--blocked', '#a3392f'],
  zone: ['--scene-zone', '#b8791c'],
  left: ['--left', '#1b4f86'],
  right: ['--right', '#6c3a74'],
} as const;

/**
 * Any CSS colour as linear RGB. The browser does the reading (so oklch(), color-mix() and
 * light-dark() all work): a probe element resolves it, one canvas pixel turns it into bytes.
 */
function makeReader(host: HTMLElement) {
  const probe = document.createElement('span');
  probe.hidden = true;
  host.append(probe);
  const canvas = document.createElement('canvas');
  canvas.width = canvas.height = 1;
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  return {
    read(property: string, fallback: string): Color {
      probe.style.color = `var(${property}, ${fallback})`;
      const resolved = getComputedStyle(probe).color || fallback;
      if (!pen) return new Color(fallback);
      pen.clearRect(0, 0, 1, 1);
      pen.fillStyle = fallback;
      pen.fillStyle = resolved;
      pen.fillRect(0, 0, 1, 1);
      const [r = 0, g = 0, b = 0] = pen.getImageData(0, 0, 1, 1).data;
      return new Color().setRGB(r / 255, g / 255, b / 255, 'srgb');
    },
    end: () => probe.remove(),
  };
}

const brightness = (c: Color): number => 0.2126 * c.r + 0.7152 * c.g + 0.0722 * c.b;

export interface ThemeWatch {
  palette(): Palette;
  end(): void;
}

/** Reads the palette now and calls `changed` whenever the page's theme may have changed. */
export function watchTheme(host: HTMLElement, changed: () => void): ThemeWatch {
  const reader = makeReader(host);
  const observer = new MutationObserver(changed);
  observer.observe(document.documentElement, {
    attributes: true,
    attributeFilter: ['data-theme', 'class', 'style'],
  });
  const media = ['(prefers-color-scheme: dark)', '(prefers-contrast: more)'].map((query) =>
    window.matchMedia(query),
  );
  for (const query of media) query.addEventListener('change', changed);
  return {
    palette() {
      const read = (key: keyof typeof PROPERTIES) =>
        reader.read(PROPERTIES[key][0], PROPERTIES[key][1]);
      const paper = read('paper');
      const ink = read('ink');
      return {
        paper,
        ink,
        quietInk: read('quietInk'),
        accent: read('accent'),
        free: read('free'),
        blocked: read('blocked'),
        zone: read('zone'),
        left: read('left'),
        right: read('right'),
        dark: brightness(ink) > brightness(paper),
      };
    },
    end() {
      observer.disconnect();
      for (const query of media) query.removeEventListener('change', changed);
      reader.end();
    },
  };
}
