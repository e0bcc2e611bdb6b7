/**
 * Lets the page start without a network from its next visit on. Does nothing where the browser allows no service worker
 * (plain http in a local network). `onNewer` is told when another build is ready; calling what it is handed shows it.
 */
export async function registerOffline(onNewer: (takeOver: () => void) => void): Promise<boolean> {
  if (typeof navigator === "undefined" || !("serviceWorker" in navigator)) return false;
  const { serviceWorker } = navigator;
  try {
    const registration = await serviceWorker.register("./service-worker.js", { scope: "./", updateViaCache: "none" });
    const offer = (worker: ServiceWorker | null): void => {
      // The first one ever takes over from nobody: nothing newer to tell of.
      if (!worker || !serviceWorker.controller) return;
      onNewer(() => {
        serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
        worker.postMessage("take over");
      });
    };
    if (registration.waiting) offer(registration.waiting);
    registration.addEventListener("updatefound", () => {
      const worker = registration.installing;
      worker?.addEventListener("statechange", () => worker.state === "installed" && offer(worker));
    });
    return true;
  } catch {
    return false;
  }
}
