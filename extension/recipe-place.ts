import * as vscode from 'vscode';

/** The recipe file that a command was given: by the editor as an address, by a code lens as its text. */
export function recipePlace(place: unknown): vscode.Uri | undefined {
    if (place instanceof vscode.Uri) return place;
    return typeof place === 'string' && place.endsWith('.kerf') ? vscode.Uri.parse(place, true) : undefined;
}
