;;; wickrule.el --- candle recipes in Emacs  -*- lexical-binding: t -*-

;; Emacs 29 and newer; Emacs 28 with the package eglot.  Copy this file
;; somewhere, and write into your init file
;;
;;     (load "/where/it/is/wickrule.el")
;;
;; The program wickrule must be on the PATH.
;;
;; Findings stand under the text while you type.  Then:
;;
;; M-x eglot-code-actions    what can be done at the cursor
;; M-x eglot-rename          another name, wherever it is named
;; M-x eglot-format-buffer   lay the file out alike
;; M-x eldoc-doc-buffer      all that is known of what stands at the cursor
;; M-.                       where it is written
;; C-M-i                     complete

(require 'eglot)

(define-derived-mode candle-mode prog-mode "Candle"
  "Candle recipes: files whose names end in .candle.hcl."
  (setq-local comment-start "# ")
  (setq-local comment-start-skip "\\(#\\|//\\)+ *")
  (setq-local indent-tabs-mode nil)
  ;; All files of a shop are one project, and have one server.
  (add-hook 'project-find-functions #'candle-shop nil t))

(modify-syntax-entry ?# "<" candle-mode-syntax-table)
(modify-syntax-entry ?\n ">" candle-mode-syntax-table)
(modify-syntax-entry ?/ ". 14" candle-mode-syntax-table)
(modify-syntax-entry ?* ". 23b" candle-mode-syntax-table)
(modify-syntax-entry ?- "_" candle-mode-syntax-table)

(defun candle-shop (folder)
  "The shop that FOLDER belongs to: where its shop.candle.hcl stands."
  (let ((root (locate-dominating-file folder "shop.candle.hcl")))
    (and root (cons 'transient root))))

(add-to-list 'auto-mode-alist '("\\.candle\\.hcl\\'" . candle-mode))
(add-to-list 'eglot-server-programs '(candle-mode . ("wickrule" "lsp")))
(add-hook 'candle-mode-hook #'eglot-ensure)

;; How long after a key the text is sent and the findings are asked for, in
;; seconds.  Emacs' own half second is felt.
(add-hook 'candle-mode-hook
          (lambda ()
            (setq-local eglot-send-changes-idle-time 0.05)
            (setq-local flymake-no-changes-timeout 0.05)))

(provide 'wickrule)
;;; wickrule.el ends here
