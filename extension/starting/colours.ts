import * as vscode from 'vscode';
import { fillColours } from '../../shared/view/fill-colours';
import type { ResinChoice } from '../../shared/view/new-recipe';

export interface Swatch {
    readonly label: string;
    readonly colour: string;
}

export const colours: readonly Swatch[] = [
    { label: vscode.l10n.t('Blue'), colour: fillColours.blue },
    { label: vscode.l10n.t('Green'), colour: fillColours.green },
    { label: vscode.l10n.t('Red'), colour: fillColours.red },
    { label: vscode.l10n.t('Ochre'), colour: fillColours.ochre },
    { label: vscode.l10n.t('White'), colour: fillColours.white },
    { label: vscode.l10n.t('Black'), colour: fillColours.black },
];

/** A square of the colour, as an address of a picture; nothing of what is not a colour gets into it. */
export function swatchOf({ colour }: Pick<ResinChoice, 'colour'>): string {
    const paint = /^#[0-9a-f]{6}$/i.test(colour) ? colour : 'none';
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="16" height="16"><rect x="1.5" y="1.5" width="13" height="13" fill="${paint}" stroke="#888"/></svg>`;
    return `data:image/svg+xml;base64,${btoa(svg)}`;
}
