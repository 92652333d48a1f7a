/** What the fragment of every aircraft’s link begins with. Alone in its file, for the first load asks for it. */
export const LINK_MARK = 'aircraft=';

/** Whether a page’s fragment carries an aircraft, sound or not. */
export const carriesAircraft = (fragment: string): boolean => fragment.startsWith(`#${LINK_MARK}`);
