;;; driver.el --- what the test asks of Emacs  -*- lexical-binding: t -*-

(defvar driver-wanted nil "The title that a person would choose next.")
(defvar driver-titles nil "The titles that were offered last.")

(setq make-backup-files nil auto-save-default nil create-lockfiles nil
      inhibit-startup-screen t ring-bell-function #'ignore
      revert-without-query '(".*"))

;; Keys for what a person calls by name: a question of emacsclient in the middle
;; of M-x would end it.
(defvar driver-path nil "The file to be opened next.")
(defun driver-open () (interactive) (find-file driver-path))
(defvar driver-name nil "The name that is to be given next.")
(defun driver-rename () (interactive) (eglot-rename driver-name))
(global-set-key (kbd "C-c o") #'driver-open)
(global-set-key (kbd "C-c r") #'driver-rename)
(defvar driver-command nil "The command that is to be called next.")
(defun driver-call () (interactive) (call-interactively driver-command))
(global-set-key (kbd "C-c x") #'driver-call)
(global-set-key (kbd "C-c h") #'eldoc-doc-buffer)
(global-set-key (kbd "C-c a") #'eglot-code-actions)
(global-set-key (kbd "C-c f") #'eglot-format-buffer)

;; A person who knows what to choose.
(define-advice completing-read (:around (read prompt table &rest more) driver)
  (if (null driver-wanted)
      (apply read prompt table more)
    (setq driver-titles (all-completions "" table))
    (prog1 driver-wanted (setq driver-wanted nil))))

(defmacro driver-in (&rest body)
  "Run BODY in the window's buffer; the value as JSON in a file.
Long answers of emacsclient are sometimes cut in two."
  `(with-current-buffer (window-buffer (selected-window))
     (let ((answer (json-encode (list (progn ,@body))))
           (coding-system-for-write 'utf-8-unix))
       (write-region answer nil (expand-file-name "answer" (getenv "DRIVER_SOCKETS")) nil 'silent)
       t)))

(defun driver-text () (buffer-substring-no-properties (point-min) (point-max)))

(defun driver-cursor (piece further)
  (goto-char (point-min))
  (prog1 (if (let ((case-fold-search nil)) (search-forward piece nil t)) t :json-false)
    (goto-char (+ (match-beginning 0) further))
    (set-window-point (selected-window) (point))))

(defun driver-findings ()
  (vconcat
   (mapcar
    (lambda (d)
      (let ((lsp (cdr (assq 'eglot-lsp-diag (flymake-diagnostic-data d)))))
        `((text . ,(buffer-substring-no-properties (flymake-diagnostic-beg d) (flymake-diagnostic-end d)))
          (line . ,(line-number-at-pos (flymake-diagnostic-beg d)))
          (code . ,(plist-get lsp :code))
          (message . ,(plist-get lsp :message))
          (severity . ,(plist-get lsp :severity)))))
    (sort (flymake-diagnostics)
          (lambda (a b) (< (flymake-diagnostic-beg a) (flymake-diagnostic-beg b)))))))

(defun driver-hover ()
  (mapconcat (lambda (buffer)
               (if (string-match-p "\\*eldoc" (buffer-name buffer))
                   (with-current-buffer buffer (driver-text)) ""))
             (buffer-list) ""))

(defun driver-offers ()
  (let* ((found (eglot-completion-at-point))
         (typed (buffer-substring-no-properties (nth 0 found) (nth 1 found)))
         (list (completion-all-completions typed (nth 2 found) (plist-get (nthcdr 3 found) :predicate) (length typed))))
    (when (consp list) (setcdr (last list) nil)) ; what stands there is no list
    (vconcat (mapcar #'substring-no-properties list))))

(defun driver-hints ()
  (vconcat
   (delq nil
         (mapcar
          (lambda (o)
            (when (overlay-get o 'eglot--inlay-hint)
              (let ((shown (concat (overlay-get o 'before-string) (overlay-get o 'after-string)))
                    ;; The overlay covers a character beside the place.
                    (at (if (overlay-get o 'before-string) (overlay-start o) (overlay-end o))))
                (concat (string-trim (buffer-substring-no-properties
                                      (save-excursion (goto-char at) (line-beginning-position)) at))
                        " [" (string-trim (substring-no-properties shown)) "]"))))
          (overlays-in (point-min) (point-max))))))

(defun driver-symbols ()
  (let (names)
    (cl-labels ((walk (list)
                  (dolist (item list)
                    (when (consp item)
                      (push (substring-no-properties (car item)) names)
                      (when (consp (cdr item)) (walk (cdr item)))))))
      (walk (funcall imenu-create-index-function)))
    (vconcat (nreverse names))))

(require 'json)
(require 'cl-lib)
(require 'subr-x)
(require 'server)
(setq server-socket-dir (getenv "DRIVER_SOCKETS") server-name "driver")
(server-start)
;;; driver.el ends here
