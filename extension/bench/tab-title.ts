import * as vscode from 'vscode';
/**
 * What is written on the tab of a bench view: the recipe's title, with the folder and then the file where the titles of two are alike.
 * @param shown address and title of each bench view that is open, itself among them
 */
export function tabTitle(uri: string, title: string, shown: Iterable<{ readonly uri: string; readonly title: string }>): string {
    const alike = [...shown].filter((each) => each.title === title && each.uri !== uri);
    if (alike.length === 0) return vscode.l10n.t('Bench: {0}', title);
    const [folder, file] = placeOf(uri);
    const tellsApart = alike.every((each) => placeOf(each.uri)[0] !== folder);
    return vscode.l10n.t('Bench: {0} ({1})', title, tellsApart ? folder : `${folder}/${file}`);
}

/** Folder and file by their last names. */
function placeOf(uri: string): [folder: string, file: string] {
    const parts = uri.split('/').map((part) => decodeURIComponent(part));
    return [parts.at(-2) ?? '', parts.at(-1) ?? ''];
}
