;;; wickrule.el --- Candle recipes, checked while they are typed  -*- lexical-binding: t -*-

;; Copyright (C) 2026 The maintainers of Wickrule

;; Author: The maintainers of Wickrule
;; Version: 0.1.0
;; Package-Requires: ((emacs "28.1") (eglot "1.9"))
;; Keywords: languages, tools
;; SPDX-License-Identifier: MIT

;; This file is not part of GNU Emacs.

;;; Commentary:

;; Wickrule reads candle recipes, in files whose names end in .candle.hcl, and
;; says where they would go wrong.  This package starts its language server by
;; way of Eglot, which Emacs 29 and newer bring along.  Install it with
;;
;;     M-x package-install-file RET wickrule.el RET
;;
;; The program wickrule has to be on the PATH, or named in `wickrule-program'.
;;
;; Findings stand under the text while you type.  Of this package:
;;
;; C-c C-s   the batch sheet of the recipe at point (`wickrule-sheet')
;; C-c C-e   why the rule of the finding at point matters (`wickrule-explain')
;; C-c C-b   its page in the handbook of the shop (`wickrule-handbook')
;; C-c C-r   put right what is safe in this file (`wickrule-mend-file')
;; C-c C-l   lay the file out (`eglot-format-buffer')
;; C-c C-a   what can be done at point (`eglot-code-actions')
;; C-c C-n   another name, wherever it is named (`eglot-rename')
;;
;; `wickrule-mend-shop' puts right what is safe in the whole shop, and
;; `wickrule-health' tells whether the program is found, and which it is.
;;
;; Of Emacs: `xref-find-definitions' goes to where a name is written,
;; `xref-find-references' to where it is used, `completion-at-point' completes,
;; and `eldoc-doc-buffer' shows all that is known of what stands at point.
;;
;; What it says is an aid, not a test report.  Your suppliers' sheets, local
;; codes and licensed practice go first.

;;; Code:

(require 'cl-lib)
(require 'easymenu)
(require 'eglot)
(require 'flymake)
(require 'jsonrpc)
(require 'project)
(require 'seq)
(require 'url-util)

(defgroup wickrule nil
  "Candle recipes, checked while they are typed."
  :group 'languages
  :prefix "wickrule-")

(defcustom wickrule-program "wickrule"
  "The program that checks recipes.
A name to be found on the PATH, or where it is."
  :type 'string)

(defcustom wickrule-level "consider"
  "The softest findings that are shown.
It counts from the next \\[wickrule-restart] on."
  :type '(choice (const :tag "Everything that is worth knowing" "consider")
                 (const :tag "What should be put right, and what must" "should")
                 (const :tag "Only what must be put right" "must")))

(defcustom wickrule-hints t
  "Non-nil shows what figures come to beside them, from Emacs 29 on.
It counts from the next \\[wickrule-restart] on."
  :type 'boolean)

(defcustom wickrule-delay 0.05
  "Seconds after a key until the text is sent and its findings are asked for.
Emacs' own half second is felt."
  :type 'number)


;;; The text

(defvar wickrule-mode-syntax-table
  (let ((table (make-syntax-table prog-mode-syntax-table)))
    (modify-syntax-entry ?# "< b" table)
    (modify-syntax-entry ?/ ". 124b" table)
    (modify-syntax-entry ?* ". 23" table)
    (modify-syntax-entry ?\n "> b" table)
    (modify-syntax-entry ?\" "\"" table)
    (modify-syntax-entry ?\\ "\\" table)
    (modify-syntax-entry ?- "_" table)
    (modify-syntax-entry ?_ "_" table)
    table)
  "What characters are in candle recipes.")

(defvar wickrule-font-lock-keywords
  '(("^[ \t]*\\([a-z_]+\\)\\(?:[ \t]+\"\\(?:[^\"\\\n]\\|\\\\.\\)*\"\\)*[ \t]*{"
     1 font-lock-keyword-face)
    ("\\_<\\([[:alpha:]_][[:alnum:]_-]*\\)[ \t]*=\\(?:[^=]\\|$\\)"
     1 font-lock-variable-name-face)
    ("\\_<\\(?:true\\|false\\)\\_>" . font-lock-constant-face)
    ("\\_<\\([a-z]+\\)(" 1 font-lock-function-name-face)
    ("=[ \t]*\"\\([0-9][^\"\n]*\\)\"" 1 font-lock-constant-face prepend))
  "Colors of candle recipes: blocks, attributes, amounts.")

(defun wickrule--propertize (start end)
  "Make a text of each block of prose between START and END.
Prose stands between <<-WORD and a line with WORD alone."
  (goto-char start)
  (while (re-search-forward "<<-?\\([[:alpha:]_][[:alnum:]_-]*\\)[ \t]*\\(\n\\)" end t)
    (let ((word (match-string 1))
          (first (match-beginning 0))
          (opening (match-beginning 2)))
      (unless (nth 8 (save-excursion (syntax-ppss first)))
        (put-text-property opening (1+ opening) 'syntax-table (string-to-syntax "|"))
        (when (re-search-forward (concat "^[ \t]*" (regexp-quote word) "\\([ \t]*\\)$") nil t)
          (let ((closing (1- (match-beginning 1))))
            (put-text-property closing (1+ closing) 'syntax-table (string-to-syntax "|"))
            (put-text-property first (1+ closing) 'syntax-multiline t)))))))

(defun wickrule-indent-line ()
  "Indent a line by two spaces for each block around it."
  (let* ((state (save-excursion (syntax-ppss (line-beginning-position))))
         (closers (save-excursion
                    (back-to-indentation)
                    (skip-chars-forward "]})")))
         (column (* 2 (max 0 (- (nth 0 state) closers)))))
    (if (nth 3 state)
        'noindent                       ; prose is the maker's own
      (if (<= (current-column) (current-indentation))
          (indent-line-to column)
        (save-excursion (indent-line-to column))))))

(defvar wickrule-mode-map
  (let ((map (make-sparse-keymap)))
    (define-key map (kbd "C-c C-s") #'wickrule-sheet)
    (define-key map (kbd "C-c C-e") #'wickrule-explain)
    (define-key map (kbd "C-c C-b") #'wickrule-handbook)
    (define-key map (kbd "C-c C-r") #'wickrule-mend-file)
    (define-key map (kbd "C-c C-l") #'eglot-format-buffer)
    (define-key map (kbd "C-c C-a") #'eglot-code-actions)
    (define-key map (kbd "C-c C-n") #'eglot-rename)
    map)
  "Keys in candle recipes.")

(easy-menu-define wickrule-menu wickrule-mode-map
  "What can be done with a candle recipe."
  '("Candle"
    ["Batch sheet" wickrule-sheet]
    ["Explain the rule of this finding" wickrule-explain]
    ["Its page in the handbook" wickrule-handbook]
    "--"
    ["What can be done here" eglot-code-actions]
    ["Mend this file" wickrule-mend-file]
    ["Mend the whole shop" wickrule-mend-shop]
    ["Lay the file out" eglot-format-buffer]
    "--"
    ["Is all well?" wickrule-health]
    ["Start the language server anew" wickrule-restart]
    ["Settings" (customize-group 'wickrule)]))

;;;###autoload
(define-derived-mode wickrule-mode prog-mode "Candle"
  "Candle recipes: files whose names end in .candle.hcl."
  (setq-local comment-start "# ")
  (setq-local comment-end "")
  (setq-local comment-start-skip "\\(?:#+\\|//+\\|/\\*+\\)[ \t]*")
  (setq-local indent-tabs-mode nil)
  (setq-local indent-line-function #'wickrule-indent-line)
  (setq-local electric-indent-chars (append "}]" electric-indent-chars))
  (setq-local font-lock-defaults '(wickrule-font-lock-keywords))
  (setq-local syntax-propertize-function #'wickrule--propertize)
  (add-hook 'syntax-propertize-extend-region-functions #'syntax-propertize-multiline 'append 'local)
  ;; All files of a shop are one project, and have one server.
  (add-hook 'project-find-functions #'wickrule--project nil t)
  (setq-local eglot-send-changes-idle-time wickrule-delay)
  (setq-local flymake-no-changes-timeout wickrule-delay)
  (wickrule--connect))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.candle\\.hcl\\'" . wickrule-mode))


;;; The language server

(defun wickrule--shop (file)
  "The folder of the shop that FILE belongs to.
It is the nearest with a shop.candle.hcl; without one, the file's own."
  (expand-file-name (or (locate-dominating-file file "shop.candle.hcl")
                        (file-name-directory file))))

(defun wickrule--project (folder)
  "The project that FOLDER is in: its shop, if it has a shop file."
  (let ((root (locate-dominating-file folder "shop.candle.hcl")))
    (and root (cons 'transient root))))

(defun wickrule--program ()
  "The path of the program, or an error with what to do."
  (or (executable-find wickrule-program)
      (user-error (if (equal wickrule-program "wickrule")
                      "There is no program wickrule on the PATH: put it there, or say where it is in wickrule-program"
                    "The setting wickrule-program is %S, and there is no program that can be run")
                  wickrule-program)))

(defun wickrule--contact (&optional _interactive)
  "The command of the language server, and the settings it is told."
  (list (wickrule--program) "lsp"
        :initializationOptions (list :level wickrule-level
                                     :hints (if wickrule-hints t :json-false))))

(add-to-list 'eglot-server-programs '(wickrule-mode . wickrule--contact))
(put 'wickrule-mode 'eglot-language-id "candle")

(defvar wickrule--complained nil
  "What was said already about a program that is not there.")

(defun wickrule--connect ()
  "Give the buffer the server of its shop, or say once why it has none."
  (when buffer-file-name
    (condition-case trouble
        (progn (wickrule--program)
               (setq wickrule--complained nil)
               (eglot-ensure))
      (user-error
       (let ((what (error-message-string trouble)))
         (unless (equal what wickrule--complained)
           (setq wickrule--complained what)
           (display-warning 'wickrule what)))))))

(defun wickrule--server ()
  "The server of the buffer, or an error with what to do."
  (unless (derived-mode-p 'wickrule-mode)
    (user-error "Open a recipe file first: its name ends in .candle.hcl"))
  (or (eglot-current-server)
      (progn (wickrule--program)
             (user-error "This file has no language server yet: M-x wickrule-restart starts one"))))

(defun wickrule--execute (command &rest arguments)
  "Have the server execute COMMAND with ARGUMENTS; return its answer."
  (let ((server (wickrule--server)))
    ;; What is typed counts, however lately.  Eglot has no public name for this;
    ;; where it has another one day, the text is `wickrule-delay' behind at most.
    (when (fboundp 'eglot--signal-textDocument/didChange)
      (eglot--signal-textDocument/didChange))
    (condition-case trouble
        (jsonrpc-request server :workspace/executeCommand
                         (list :command command :arguments (vconcat arguments)))
      (jsonrpc-error
       (user-error "%s" (or (alist-get 'jsonrpc-error-message (cdr trouble))
                            (error-message-string trouble)))))))

(defun wickrule--uri ()
  "The buffer's file as a URI."
  (let ((path (file-truename buffer-file-name)))
    (concat "file://" (if (string-prefix-p "/" path) "" "/")
            (url-hexify-string path url-path-allowed-chars))))

(defun wickrule-restart ()
  "Start the language server anew.
Needed after the program was replaced, or settings were changed."
  (interactive)
  (setq wickrule--complained nil)
  (let ((server (and (derived-mode-p 'wickrule-mode) (eglot-current-server))))
    (when server
      (eglot-shutdown server)))
  (dolist (buffer (buffer-list))
    (with-current-buffer buffer
      (when (and (derived-mode-p 'wickrule-mode) (not (eglot-current-server)))
        (wickrule--connect)))))


;;; Pages

(defvar wickrule-page-font-lock-keywords
  '(("^#+ .*$" . 'bold)
    ("\\*\\*\\([^*\n]+\\)\\*\\*" 1 'bold)
    ("`\\([^`\n]+\\)`" 1 font-lock-constant-face))
  "Headings, names and what weighs more, in pages.")

(define-derived-mode wickrule-page-mode special-mode "Page"
  "A page that Wickrule made."
  (setq-local font-lock-defaults '(wickrule-page-font-lock-keywords t))
  (visual-line-mode))

(defun wickrule--show (name text)
  "Show TEXT in a window of its own, as a page with NAME."
  (with-current-buffer (get-buffer-create (format "*%s*" name))
    (let ((inhibit-read-only t))
      (erase-buffer)
      (insert text)
      (goto-char (point-min)))
    (wickrule-page-mode)
    (pop-to-buffer (current-buffer))))


;;; What stands at point

(defun wickrule--words (verb)
  "What the program would complete after VERB in the shop of the buffer."
  (let ((default-directory (wickrule--shop buffer-file-name)))
    (ignore-errors
      (process-lines (wickrule--program) "completions" "words" verb))))

(defun wickrule--recipe-here ()
  "The key of the recipe at point, else of the first one of the buffer."
  (let ((header "[ \t]*recipe[ \t]+\"\\([^\"\n]+\\)\"")
        (key nil))
    (save-excursion
      (goto-char (or (car (nth 9 (syntax-ppss (line-end-position)))) (point)))
      (beginning-of-line)
      (cond
       ((looking-at header)
        (setq key (match-string-no-properties 1)))
       (t
        (goto-char (point-min))
        ;; Recipes within a rule are none of the shop's.
        (while (and (not key) (re-search-forward (concat "^" header) nil t))
          (when (zerop (nth 0 (save-match-data (save-excursion (syntax-ppss (match-beginning 0))))))
            (setq key (match-string-no-properties 1)))))))
    (or key (user-error "There is no recipe in this file"))))

(defun wickrule--rule-here ()
  "The rule of the finding at point, else of one on its line, or nil."
  (let* ((code (lambda (d)
                 (let ((code (plist-get (alist-get 'eglot-lsp-diag (flymake-diagnostic-data d)) :code)))
                   (and (stringp code) code))))
         (size (lambda (d) (- (flymake-diagnostic-end d) (flymake-diagnostic-beg d))))
         (here (seq-filter code (flymake-diagnostics (point))))
         (beside (seq-filter code (flymake-diagnostics (line-beginning-position) (line-end-position))))
         (first (or (car (seq-sort-by size #'< here)) (car beside))))
    (and first (funcall code first))))

(defun wickrule--read-rule (otherwise)
  "The rule of the finding at point; asked for with a prefix argument.
OTHERWISE non-nil asks too where there is no finding."
  (let ((here (wickrule--rule-here)))
    (if (or current-prefix-arg (and otherwise (not here)))
        (completing-read "Rule: " (append (wickrule--words "prove") (wickrule--words "explain"))
                         nil nil nil nil here)
      here)))


;;; Commands

;;;###autoload
(defun wickrule-sheet (recipe)
  "Show the batch sheet of RECIPE: what to weigh and what to do.
It is the one at point, else the first of the file; with a prefix
argument it is asked for."
  (interactive (progn
                 (wickrule--server)
                 (list (if current-prefix-arg
                           (completing-read "Recipe: " (wickrule--words "sheet"))
                         (wickrule--recipe-here)))))
  (wickrule--show (concat "batch sheet " recipe)
                  (wickrule--execute "wickrule.sheet" (wickrule--uri) recipe)))

;;;###autoload
(defun wickrule-explain (rule)
  "Tell why RULE matters and how to put its findings right.
It is that of the finding at point; where there is none, and with a
prefix argument, it is asked for."
  (interactive (progn (wickrule--server) (list (wickrule--read-rule t))))
  (wickrule--show (concat "rule " rule) (wickrule--execute "wickrule.explain" rule)))

;;;###autoload
(defun wickrule-handbook (&optional rule)
  "Make the handbook of the shop and open it in the browser, at RULE.
It is that of the finding at point, else the handbook's first page is
opened; with a prefix argument the rule is asked for."
  (interactive (progn (wickrule--server) (list (wickrule--read-rule nil))))
  (let* ((shop (directory-file-name (wickrule--shop buffer-file-name)))
         (above (locate-user-emacs-file "wickrule"))
         (into (expand-file-name (concat "handbook-" (substring (secure-hash 'sha256 shop) 0 12)) above))
         (program (wickrule--program)))
    (make-directory above t)
    (with-temp-buffer
      (unless (zerop (call-process program nil t nil "handbook" shop "--into" into))
        (user-error "%s" (string-trim (buffer-string)))))
    (browse-url-of-file
     (or (seq-find #'file-exists-p
                   (and rule (list (expand-file-name (format "rule-%s.html" rule) into)
                                   (expand-file-name (format "own-%s.html" rule) into))))
         (expand-file-name "index.html" into)))))

(defun wickrule--mend (command)
  "Have the server do COMMAND, and not ask whether texts may be changed."
  (wickrule--server)                    ; or say what to do
  (cl-progv (list (if (boundp 'eglot-confirm-server-edits) ; Emacs 30
                      'eglot-confirm-server-edits
                    'eglot-confirm-server-initiated-edits))
      '(nil)
    (message "%s" (wickrule--execute command (wickrule--uri)))))

;;;###autoload
(defun wickrule-mend-file ()
  "Put right in this file what can be without changing what is made."
  (interactive)
  (wickrule--mend "wickrule.mendFile"))

;;;###autoload
(defun wickrule-mend-shop ()
  "Put right in the whole shop what can be without changing what is made."
  (interactive)
  (wickrule--mend "wickrule.mendShop"))


;;; Whether all is well

(defun wickrule--found ()
  "The path of the program and its version, or what is wrong."
  (condition-case trouble
      (let ((program (wickrule--program)))
        (with-temp-buffer
          (let ((status (call-process program nil t nil "version"))
                (said (string-trim (buffer-string))))
            (format (if (eq status 0) "%s: %s" "%s does not run: %s") program said))))
    (error (error-message-string trouble))))

(defun wickrule--buffers ()
  "A line for each recipe file that is open: its server, and its shop."
  (let ((lines nil))
    (dolist (buffer (buffer-list))
      (with-current-buffer buffer
        (when (and buffer-file-name (derived-mode-p 'wickrule-mode))
          (push (format "- `%s` has %s, and is %s"
                        (abbreviate-file-name buffer-file-name)
                        (if (eglot-current-server) "its server" "no server")
                        (if (locate-dominating-file buffer-file-name "shop.candle.hcl")
                            (format "of the shop in `%s`" (abbreviate-file-name (wickrule--shop buffer-file-name)))
                          "of no shop: there is no shop.candle.hcl above it"))
                lines))))
    (if lines (string-join (sort lines #'string<) "\n") "- no recipe file is open")))

;;;###autoload
(defun wickrule-health ()
  "Tell whether the program is found, which it is, and what has its server."
  (interactive)
  (wickrule--show "wickrule health"
                  (format "# Wickrule in Emacs %s\n\n- %s\n- settings: %s\n%s\n" emacs-version
                          (wickrule--found)
                          (mapconcat (lambda (name) (format "`%s` is %S" name (symbol-value name)))
                                     '(wickrule-program wickrule-level wickrule-hints wickrule-delay) ", ")
                          (wickrule--buffers))))

(provide 'wickrule)
;;; wickrule.el ends here
