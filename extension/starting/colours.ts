import * as vscode from 'vscode';
import type { ResinChoice } from '../../shared/view/new-recipe';

export interface Swatch {
    readonly label: string;
    readonly colour: string;
}

/** Colours of which a resin can be written: our own, by eye. */
export const colours: readonly Swatch[] = [
    { label: vscode.l10n.t('Blue'), colour: '#1d5f7a' },
    { label: vscode.l10n.t('Green'), colour: '#2f6b4a' },
    { label: vscode.l10n.t('Red'), colour: '#8f3a24' },
    { label: vscode.l10n.t('Ochre'), colour: '#b98a2f' },
    { label: vscode.l10n.t('White'), colour: '#e4ebe4' },
    { label: vscode.l10n.t('Black'), colour: '#22211f' },
];

/** A square of the colour, as an address of a picture; nothing of what is not a colour gets into it. */
export function swatchOf({ colour }: Pick<ResinChoice, 'colour'>): string {
    const paint = /^#[0-9a-f]{6}$/i.test(colour) ? colour : 'none';
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="16" height="16"><rect x="1.5" y="1.5" width="13" height="13" fill="${paint}" stroke="#888"/></svg>`;
    return `data:image/svg+xml;base64,${btoa(svg)}`;
}
