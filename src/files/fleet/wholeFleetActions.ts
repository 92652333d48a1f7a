import { type ActionParts, type FleetWork, Refusal, type Refused } from './fleetWork';
import { fleetToFile, takeInFleet } from './wholeFleet';

/** The whole fleet into a file, and a file into the fleet. */
export const wholeFleetActions = ({ bench, fleet, pickers }: ActionParts, { act }: FleetWork) => ({
  saveAll: () =>
    act(async () => {
      const { text, count, left } = await fleetToFile(fleet);
      const name = `fleet-${new Date().toISOString().slice(0, 10)}.json`;
      pickers.download(name, text);
      bench.notice.tell({
        about: 'file',
        tone: left > 0 ? 'bad' : 'done',
        text: `${count} aircraft saved as ${name}, in the browser’s downloads.${left > 0 ? ` ${left} of the fleet do not read and are not in it.` : ''}`,
      });
    }),
  takeIn: async (): Promise<Refused> => {
    const file = await pickers.chooseFile('.json,application/json');
    if (!file) return null;
    return act(async () => {
      const took = await takeInFleet(fleet, file);
      if (!took.ok) throw new Refusal(took.sentence);
      bench.notice.tell({ about: 'file', tone: took.left > 0 ? 'bad' : 'note', text: took.sentence });
    });
  },
});
