import './arrange.css';
import { useEffect, useState } from 'react';
import { useBench } from '../../store/react';
import { Icon } from '../icons';
import { ArrangeTab } from './ArrangeTab';
import { BallastTab } from './BallastTab';
import { WhatIfTab } from './WhatIfTab';

const tabs = [
  { id: 'arrange', label: 'Arrange' },
  { id: 'ballast', label: 'Ballast' },
  { id: 'what-if', label: 'What if' },
] as const;

/** The sheet for everything about where things should sit. */
export function ArrangeSheet() {
  const bench = useBench();
  const [tab, setTab] = useState<(typeof tabs)[number]['id']>('arrange');
  const close = () => bench.place.api.setState({ open: false });
  useEffect(() => () => bench.place.api.setState({ ghost: null }), [bench]);
  return (
    <div className="arrange">
      <header>
        <h2>Arrange for me</h2>
        <button type="button" className="button bare" aria-label="Close" onClick={close}>
          <Icon name="cross" />
        </button>
      </header>
      <fieldset className="arrange-tabs">
        <legend className="unseen">What to look at</legend>
        {tabs.map(({ id, label }) => (
          <label key={id}>
            <input type="radio" name="arrange-tab" checked={tab === id} onChange={() => setTab(id)} />
            {label}
          </label>
        ))}
      </fieldset>
      <div className="arrange-body" key={tab}>
        {tab === 'arrange' && <ArrangeTab />}
        {tab === 'ballast' && <BallastTab />}
        {tab === 'what-if' && <WhatIfTab />}
      </div>
    </div>
  );
}
