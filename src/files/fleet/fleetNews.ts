/** How the tabs of one browser tell each other that the fleet has changed. */
export interface FleetNews {
  tell(): void;
  hear(listener: () => void): void;
}

export function fleetNews(): FleetNews {
  const channel = typeof BroadcastChannel === 'function' ? new BroadcastChannel('counterpoise.fleet') : null;
  return {
    tell: () => channel?.postMessage('changed'),
    hear: (listener) => {
      if (channel) channel.onmessage = listener;
    },
  };
}
