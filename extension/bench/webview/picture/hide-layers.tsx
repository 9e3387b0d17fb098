import { type Shown, shownWords } from './shown';

interface HideLayersProps {
    /** What there is to hide. */
    readonly there: readonly Shown[];
    readonly hidden: readonly Shown[];
    readonly hide: (what: Shown, isHidden: boolean) => void;
}

/** A box for each thing that can be left out of the pictures, flat and in the round. */
export function HideLayers({ there, hidden, hide }: HideLayersProps) {
    return (
        <fieldset class="shows">
            <legend>Show</legend>
            {there.map((what) => (
                <label key={what}>
                    <input
                        type="checkbox"
                        checked={!hidden.includes(what)}
                        onChange={({ currentTarget }) => hide(what, !currentTarget.checked)}
                    />
                    {shownWords[what]}
                </label>
            ))}
        </fieldset>
    );
}
