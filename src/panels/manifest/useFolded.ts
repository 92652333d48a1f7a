import { useEffect, useState } from 'react';
import type { ManifestRow } from '../../model/words/manifestRows';
import { useView } from '../../store/react';

type Group = ManifestRow['group'];

/** The sections that are folded away. The one of what is selected, here or elsewhere, opens. */
export function useFolded(rows: readonly ManifestRow[]) {
  const [folded, setFolded] = useState<ReadonlySet<Group>>(new Set<Group>(['structure']));
  const selectedId = useView((view) => view.selectedId);
  const selectedGroup = rows.find(({ id }) => id === selectedId)?.group;
  useEffect(() => {
    if (selectedGroup) setFolded((before) => without(before, selectedGroup));
  }, [selectedGroup]);
  const toggle = (group: Group) =>
    setFolded((before) => (before.has(group) ? without(before, group) : new Set([...before, group])));
  return { folded, toggle };
}

const without = (groups: ReadonlySet<Group>, group: Group): ReadonlySet<Group> =>
  groups.has(group) ? new Set([...groups].filter((each) => each !== group)) : groups;
