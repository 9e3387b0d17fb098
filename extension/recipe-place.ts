import * as vscode from 'vscode';

/** The recipe file that a command was given: by the editor as an address, by a code lens as its text. What else an editor hands over is none. */
export function recipePlace(place: unknown): vscode.Uri | undefined {
    const uri = typeof place === 'string' && /^[a-z][\w+.-]*:/i.test(place) ? vscode.Uri.parse(place, true) : place;
    return uri instanceof vscode.Uri && mayHoldRecipes(uri) ? uri : undefined;
}

/** A text that has never been saved has a language and no ending. */
export function mayHoldRecipes(uri: vscode.Uri): boolean {
    return uri.path.endsWith('.kerf') || uri.scheme === 'untitled';
}

/** Whether an open text holds recipes of the maker's: the built-in stock is read only and holds none. */
export function isRecipeText({ languageId, uri }: vscode.TextDocument): boolean {
    return languageId === 'kerfbook' && uri.scheme !== 'kerfbook-stock';
}
