import { session } from './shared.ts';

describe('a faulty recipe on the screen', () => {
    it('is underlined where it is wrong', async () => {
        const workbench = await session.open();
        await workbench.openFile('heron-tray-faulty.kerf');
        await workbench.page.locator('.monaco-editor .squiggly-error').first().waitFor({ state: 'attached' });
        await workbench.status.getByText(/heron-tray-faulty · .*(h|min|unknown)/).waitFor();
        await session.shot('squiggles');
    });
});
