import { signal } from '@preact/signals';

/** Whether the window is a phone's: then the picture of the sensor comes right under the answer. */
const query = matchMedia('(max-width: 40rem)');
export const phone = signal(query.matches);
query.addEventListener('change', () => {
  phone.value = query.matches;
});
