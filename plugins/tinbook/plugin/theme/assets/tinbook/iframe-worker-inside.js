// What stands in for a worker from a folder has inside: what a worker has of itself. A file, as pages run no script in
// the page whose sum they do not know.
window.postMessage = (message, target) => parent.postMessage(message, target || "*");
window.importScripts = (...files) =>
  files.reduce(
    (before, file) =>
      before.then(
        () =>
          new Promise(done => {
            const script = document.createElement("script");
            script.src = file;
            script.onload = done;
            document.body.appendChild(script);
          }),
      ),
    Promise.resolve(),
  );
window.addEventListener("error", ({ error }) => {
  parent.dispatchEvent(new ErrorEvent("error", { filename: document.body.dataset.of, error }));
});
