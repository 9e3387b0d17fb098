import { expect, it } from 'vitest';
import { tabTitle } from '../../extension/bench/tab-title';

const tray = { uri: 'file:///shop/spring/tray.kerf', title: 'Tray' };

it('a bench tab says the recipe’s title alone where it is the only one of it', () => {
    expect(tabTitle(tray.uri, 'Tray', [tray, { uri: 'file:///shop/spring/lid.kerf', title: 'Lid' }])).toBe('Bench: Tray');
    expect(tabTitle(tray.uri, 'Tray', [])).toBe('Bench: Tray');
});

it('says the folder where two titles are alike, and the file where the folders are alike too', () => {
    const other = { uri: 'file:///shop/au%20tumn/tray.kerf', title: 'Tray' };
    expect(tabTitle(tray.uri, 'Tray', [tray, other])).toBe('Bench: Tray (spring)');
    expect(tabTitle(other.uri, 'Tray', [tray, other])).toBe('Bench: Tray (au tumn)');
    expect(tabTitle(tray.uri, 'Tray', [tray, { uri: 'file:///shop/spring/copy.kerf', title: 'Tray' }])).toBe(
        'Bench: Tray (spring/tray.kerf)',
    );
});
