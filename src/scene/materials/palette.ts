import { useSyncExternalStore } from 'react';
import { Color } from 'three';
import type { BodyRole } from '../../model/airframe/bodies';

/** What the stage paints with, read from the page's own custom properties so that one palette serves both. */
export interface Palette {
  readonly dark: boolean;
  /** Around the mat. */
  readonly room: string;
  readonly mat: string;
  readonly matLine: string;
  readonly matRule: string;
  readonly ink: string;
  readonly paper: string;
  readonly band: string;
  readonly water: string;
  /** A saturated liquid, for the stage: water or fuel. */
  readonly liquid: (water: boolean) => string;
  readonly bad: string;
  readonly good: string;
  readonly selected: string;
  readonly vellum: string;
  /** The airframe's drawn lines. */
  readonly pencil: string;
  readonly role: (role: BodyRole) => string;
}

const FALLBACK: Readonly<Record<string, string>> = {
  '--mat': '#1f5a4b',
  '--mat-line': '#4d8a78',
  '--mat-rule': '#dff3e9',
  '--ink': '#1f2a37',
  '--paper': '#fbfcfc',
  '--paper-2': '#eef1f1',
  '--band': '#ffd84d',
  '--bad': '#c8372d',
  '--good': '#1d6b4f',
  '--selected': '#1f2a37',
  '--energy': '#ef8a2b',
  '--radio': '#7c6bd6',
  '--control': '#c2577f',
  '--powerplant': '#9aa3ad',
  '--payload': '#3d4651',
  '--undercarriage': '#6b737c',
  '--ballast': '#2b2b2b',
  '--other': '#8b8475',
  '--airframe': '#b4b8b0',
  '--fuel': '#2f8fd0',
  '--water': '#1793a8',
};

const mix = (a: string, b: string, share: number) =>
  `#${new Color(a).lerp(new Color(b), share).getHexString()}`;

function readPalette(): Palette {
  const style = getComputedStyle(document.documentElement);
  const of = (name: string) => style.getPropertyValue(name).trim() || FALLBACK[name] || '#808080';
  const paper = of('--paper');
  const { l } = new Color(paper).getHSL({ h: 0, s: 0, l: 0 });
  const dark = l < 0.5;
  return {
    dark,
    room: dark ? mix(paper, '#05080a', 0.25) : mix(of('--paper-2'), of('--mat'), 0.24),
    mat: of('--mat'),
    matLine: of('--mat-line'),
    matRule: of('--mat-rule'),
    ink: of('--ink'),
    paper,
    band: of('--band'),
    water: of('--water'),
    liquid: (water) => (water ? (dark ? '#19c3d6' : '#0fa3bb') : dark ? '#2f9dff' : '#0a74e0'),
    bad: of('--bad'),
    good: of('--good'),
    selected: of('--selected'),
    vellum: '#f4f8fa',
    pencil: dark ? '#dfe9ec' : '#16222c',
    role: (role) => (role === 'airframe' ? of('--airframe') : of(`--${role}`)),
  };
}

let palette: Palette | null = null;

function subscribe(listener: () => void): () => void {
  const changed = () => {
    palette = null;
    listener();
  };
  const observer = new MutationObserver(changed);
  observer.observe(document.documentElement, {
    attributes: true,
    attributeFilter: ['data-theme', 'class', 'style'],
  });
  const scheme = matchMedia('(prefers-color-scheme: dark)');
  scheme.addEventListener('change', changed);
  return () => {
    observer.disconnect();
    scheme.removeEventListener('change', changed);
  };
}

const current = () => {
  palette ??= readPalette();
  return palette;
};

/** The palette of the theme shown; the same object until the theme changes. */
export const usePalette = (): Palette => useSyncExternalStore(subscribe, current);
