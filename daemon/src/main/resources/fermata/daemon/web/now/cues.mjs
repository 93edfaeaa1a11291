// Sound and the screen: what one touch opens. Tones are made here; nothing is fetched.

let audio = null;

/** Opens the ears of the page; must be called by a touch or a key. */
export function openSound() {
  audio ??= new AudioContext();
  audio.resume();
}

export function closeSound() {
  audio?.suspend();
}

/** Short tones one after the other, in hertz. */
export function play(...tones) {
  if (audio === null || audio.state !== "running") return;
  tones.forEach((hertz, index) => {
    const at = audio.currentTime + index * 0.14;
    const tone = audio.createOscillator();
    const loudness = audio.createGain();
    tone.frequency.value = hertz;
    loudness.gain.setValueAtTime(0, at);
    loudness.gain.linearRampToValueAtTime(0.2, at + 0.01);
    loudness.gain.exponentialRampToValueAtTime(0.001, at + 0.13);
    tone.connect(loudness).connect(audio.destination);
    tone.start(at);
    tone.stop(at + 0.14);
  });
}

/** Keeps the screen awake; false where the browser cannot, which is so on plain addresses of other machines. */
export async function keepAwake() {
  if (!("wakeLock" in navigator)) return false;
  const ask = async () => {
    try {
      await navigator.wakeLock.request("screen");
      return true;
    } catch {
      return false;
    }
  };
  // The browser lets go of it whenever the page is hidden.
  document.addEventListener("visibilitychange", () => { if (document.visibilityState === "visible") ask(); });
  return ask();
}
