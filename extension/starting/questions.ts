import * as vscode from 'vscode';
import type { NewRecipeChoices, NewRecipeParams, Picked, StockChoice } from '../../shared/view/new-recipe';
import type { Technique } from '../../shared/view/techniques';
import { type Asked, choose, type Item, type } from './ask';
import { colours, swatchOf } from './colours';
import { spokenName } from './spoken-name';

/** What is known of a new recipe while it is asked for. */
export type Draft = Partial<
    Pick<NewRecipeParams, 'technique' | 'board' | 'veneer' | 'laser' | 'resin' | 'colour' | 'art' | 'title'>
> & {
    readonly artChosen?: boolean;
};

/** A question, and the draft as it goes on where nothing has to be asked. */
export interface Question {
    /** Undefined where it has to be asked. */
    readonly settled?: (draft: Draft) => Draft | undefined;
    readonly ask: (draft: Draft, place: Place) => Promise<Asked<Draft>>;
}

/** Which of how many questions it is. */
interface Place {
    readonly step: number;
    readonly of: number;
}

const title = vscode.l10n.t('New Recipe');

/** The questions in their order; one that has only one answer is not asked. */
export function questions(choices: NewRecipeChoices, art: readonly vscode.Uri[]): readonly Question[] {
    const usable = (draft: Draft) => choices.lasers.filter(({ foilStops }) => foilStops || draft.technique !== 'inlay');
    return [
        {
            ask: (draft, place) =>
                taking(
                    choose({ title, ...place, placeholder: vscode.l10n.t('Which technique?') }, techniques(draft)),
                    (technique) => ({
                        ...draft,
                        technique,
                    }),
                ),
        },
        {
            ask: (draft, place) =>
                taking(
                    choose(
                        { title, ...place, placeholder: vscode.l10n.t('Which board?') },
                        stock(choices.boards, vscode.l10n.t('Woods, for a board you have yet to measure')),
                    ),
                    (board) => ({ ...draft, board }),
                ),
        },
        {
            settled: (draft) => (draft.technique === 'inlay' ? undefined : draft),
            ask: (draft, place) => {
                const any: Item<Picked | 'any'> = {
                    label: vscode.l10n.t('The one that stands out most'),
                    description: vscode.l10n.t('chosen from all of them'),
                    value: 'any',
                };
                const items = [any, ...stock(choices.veneers, vscode.l10n.t('Woods, for a veneer you have yet to buy'))];
                return taking(
                    choose({ title, ...place, placeholder: vscode.l10n.t('Which veneer is let in?') }, items),
                    (veneer) => {
                        const { veneer: _old, ...rest } = draft;
                        return veneer === 'any' ? rest : { ...rest, veneer };
                    },
                );
            },
        },
        {
            settled: (draft) => (draft.technique === 'filled' ? undefined : draft),
            ask: (draft, place) =>
                taking(
                    choose({ title, ...place, placeholder: vscode.l10n.t('Which colour is it filled with?') }, fills(choices)),
                    (fill) => {
                        const { resin: _resin, colour: _colour, ...rest } = draft;
                        return { ...rest, ...fill };
                    },
                ),
        },
        {
            settled: (draft) => {
                const own = usable(draft).filter(({ file }) => file !== undefined);
                return own.length === 1 ? { ...draft, laser: picked(own[0]!) } : undefined;
            },
            ask: (draft, place) => {
                const items = stock(
                    usable(draft).map((laser) => ({ ...laser, coupons: [] })),
                    vscode.l10n.t('Kinds of laser, with figures of a usual one'),
                );
                return taking(choose({ title, ...place, placeholder: vscode.l10n.t('Which laser?') }, items), (laser) => ({
                    ...draft,
                    laser,
                }));
            },
        },
        {
            settled: (draft) => (draft.artChosen || artItems(art, draft.technique).length === 1 ? draft : undefined),
            ask: (draft, place) =>
                taking(
                    choose({ title, ...place, placeholder: vscode.l10n.t('Which art?') }, artItems(art, draft.technique)),
                    (uri) => {
                        const { art: _old, title: _title, ...rest } = draft;
                        return uri === 'none' ? rest : { ...rest, art: uri, title: spokenName(uri) };
                    },
                ),
        },
        {
            ask: (draft, place) =>
                taking(
                    type(
                        {
                            title,
                            ...place,
                            prompt: vscode.l10n.t('What is it called? The file is named after it.'),
                            value: draft.title ?? '',
                        },
                        (text) =>
                            text.trim() === ''
                                ? vscode.l10n.t('Type a name: the recipe and its file are called by it.')
                                : text.length > 80
                                  ? vscode.l10n.t('No more than 80 letters.')
                                  : undefined,
                    ),
                    (name) => ({ ...draft, title: name.trim() }),
                ),
        },
    ];
}

/** How many questions there will be as far as is known, the size of the piece included. */
export function countOf(all: readonly Question[], draft: Draft): number {
    return all.filter(({ settled }) => settled?.(draft) === undefined).length + 1;
}

/** The shop's resins, then colours of which one is written, each with its swatch. */
function fills({ resins }: NewRecipeChoices): Item<Pick<Draft, 'resin' | 'colour'>>[] {
    const swatch = (colour: string) => vscode.Uri.parse(swatchOf({ colour }), true);
    return [
        ...(resins.length > 0 ? [{ label: vscode.l10n.t('In the workshop'), kind: vscode.QuickPickItemKind.Separator }] : []),
        ...resins.map(({ name, file, detail, colour }) => ({
            label: name,
            description: detail,
            iconPath: swatch(colour),
            value: { resin: picked({ name, ...(file === undefined ? {} : { file }) }) },
        })),
        { label: vscode.l10n.t('Colours, for a resin you have yet to tint'), kind: vscode.QuickPickItemKind.Separator },
        ...colours.map(({ label, colour }) => ({ label, description: colour, iconPath: swatch(colour), value: { colour } })),
    ];
}

function techniques({ art, artChosen }: Draft): Item<Technique>[] {
    const picture = artChosen && art !== undefined && !/\.svg$/i.test(art);
    const all: Item<Technique>[] = [
        {
            value: 'engraving',
            label: vscode.l10n.t('Plain engraving'),
            description: vscode.l10n.t('colour, not depth'),
            iconPath: new vscode.ThemeIcon('edit'),
        },
        {
            value: 'filled',
            label: vscode.l10n.t('Filled engraving'),
            description: vscode.l10n.t('pockets flooded with tinted resin'),
            iconPath: new vscode.ThemeIcon('paintcan'),
        },
        {
            value: 'inlay',
            label: vscode.l10n.t('Reverse inlay'),
            description: vscode.l10n.t('veneer let into a pocket'),
            iconPath: new vscode.ThemeIcon('extensions'),
        },
        {
            value: 'picture',
            label: vscode.l10n.t('Picture in greys'),
            description: vscode.l10n.t('dots, from a PNG or JPEG'),
            iconPath: new vscode.ThemeIcon('file-media'),
        },
    ];
    return artChosen && !picture ? all.filter(({ value }) => value !== 'picture') : all;
}

function stock(choices: readonly StockChoice[], heading: string): Item<Picked>[] {
    const item = (choice: StockChoice): Item<Picked> => ({
        label: choice.name,
        description: [choice.detail, choice.coupons.length > 0 ? vscode.l10n.t('coupon on {0}', choice.coupons.join(', ')) : '']
            .filter((part) => part !== '')
            .join(' · '),
        value: picked(choice),
    });
    const own = choices.filter(({ file }) => file !== undefined);
    const builtIn = choices.filter(({ file }) => file === undefined);
    return [
        ...(own.length > 0 ? [{ label: vscode.l10n.t('In the workshop'), kind: vscode.QuickPickItemKind.Separator }] : []),
        ...own.map(item),
        { label: heading, kind: vscode.QuickPickItemKind.Separator },
        ...builtIn.map(item),
    ];
}

function artItems(art: readonly vscode.Uri[], technique: Technique | undefined): Item<string>[] {
    const none: Item<string> = {
        label: vscode.l10n.t('None yet'),
        description:
            technique === 'picture'
                ? vscode.l10n.t('writes a picture to be replaced')
                : vscode.l10n.t('writes a drawing to be drawn over'),
        value: 'none',
    };
    const fitting = art.filter((uri) => technique !== 'picture' || !/\.svg$/i.test(uri.path));
    return [none, ...fitting.map((uri) => ({ label: vscode.workspace.asRelativePath(uri), value: uri.toString() }))];
}

function picked({ name, file }: Picked): Picked {
    return { name, ...(file === undefined ? {} : { file }) };
}

async function taking<T>(asked: Promise<Asked<T>>, take: (answer: T) => Draft): Promise<Asked<Draft>> {
    const result = await asked;
    return typeof result === 'string' ? result : { answer: take(result.answer) };
}
